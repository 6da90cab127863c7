/**
 * The same piece in a general path tracer for meshes (three-gpu-pathtracer, MIT): the product's own mesh of the cut ball, glass
 * of the same index without dispersion, the same light as a picture all around, the same eye.
 */
import {
  BufferAttribute,
  BufferGeometry,
  DataTexture,
  EquirectangularReflectionMapping,
  FloatType,
  LinearFilter,
  Mesh,
  MeshPhysicalMaterial,
  PerspectiveCamera,
  RepeatWrapping,
  RGBAFormat,
  Scene,
  WebGLRenderer,
} from "three";
import { WebGLPathTracer } from "three-gpu-pathtracer";
import { meshOf } from "../../../src/core/geometry/mesh-cut.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { lightRadiance } from "../../../src/core/optics/lights.ts";
import { blocksOf, type Run, relativeError, type Step } from "./noise.ts";
import { BENCH_VIEW, benchScene, spreadPlanes } from "./scenes.ts";

/** Edges of the ball's mesh: fine enough that its chords are not seen. */
const SEGMENTS = 64;
/** As many as the yardstick's: more would cost it more. */
const BOUNCES = 12;
const LIGHT = { width: 512, height: 256 };
/** How often a compile in the background is asked whether it is done, milliseconds. */
const POLL_MS = 20;

/** Flat facets, smooth skin: each triangle has its own three vertices. */
function geometryOf(count: number): BufferGeometry {
  const planes = spreadPlanes(count);
  const { positions, skinNormals, triangles, trianglePlanes } = meshOf(cutBall(planes), SEGMENTS);
  const at = new Float32Array(3 * triangles.length);
  const normal = new Float32Array(3 * triangles.length);
  triangles.forEach((v, i) => {
    const plane = trianglePlanes[Math.floor(i / 3)];
    at.set(positions.subarray(3 * v, 3 * v + 3), 3 * i);
    normal.set(plane >= 0 ? planes[plane].n : skinNormals.subarray(3 * v, 3 * v + 3), 3 * i);
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(at, 3));
  geometry.setAttribute("normal", new BufferAttribute(normal, 3));
  geometry.setAttribute("uv", new BufferAttribute(new Float32Array(2 * triangles.length), 2));
  return geometry;
}

/** The light as a picture all around, rows from the bottom. */
function lightPicture(count: number): DataTexture {
  const { width, height } = LIGHT;
  const { light } = benchScene(count);
  const data = new Float32Array(4 * width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [a, b] = [2 * Math.PI * ((x + 0.5) / width - 0.5), Math.PI * ((y + 0.5) / height - 0.5)];
      const rgb = lightRadiance(light, [Math.cos(b) * Math.cos(a), Math.sin(b), Math.cos(b) * Math.sin(a)]);
      data.set([...rgb, 1], 4 * (y * width + x));
    }
  const picture = new DataTexture(data, width, height, RGBAFormat, FloatType);
  picture.mapping = EquirectangularReflectionMapping;
  [picture.minFilter, picture.magFilter] = [LinearFilter, LinearFilter];
  picture.wrapS = RepeatWrapping;
  picture.needsUpdate = true;
  return picture;
}

function sceneOf(count: number): Scene {
  const scene = new Scene();
  const glass = new MeshPhysicalMaterial({
    color: 0xffffff,
    roughness: 0,
    metalness: 0,
    transmission: 1,
    ior: benchScene(count).nd,
    // A thickness tells the tracer that this is a body and no film.
    thickness: 1,
  });
  scene.add(new Mesh(geometryOf(count), glass));
  scene.environment = scene.background = lightPicture(count);
  return scene;
}

function cameraOf(): PerspectiveCamera {
  const { eye, right, up, back, fieldDeg } = BENCH_VIEW;
  const camera = new PerspectiveCamera(fieldDeg, 1, 0.1, 100);
  camera.matrixAutoUpdate = false;
  camera.matrix.set(...at(0), ...at(1), ...at(2), 0, 0, 0, 1);
  camera.matrix.decompose(camera.position, camera.quaternion, camera.scale);
  camera.updateMatrixWorld(true);
  return camera;

  function at(k: 0 | 1 | 2): [number, number, number, number] {
    return [right[k], up[k], back[k], eye[k]];
  }
}

export interface GeneralRun extends Run {
  /** Until the first sample is there: building, sending, compiling. */
  readonly readyMs: number;
}

/** Samples 1, 2, 4 .. `most`, each against the picture after `reference` samples of a run of its own. */
export async function traceGeneral(
  count: number,
  size: number,
  most: number,
  reference: number,
): Promise<GeneralRun> {
  const started = performance.now();
  const renderer = new WebGLRenderer({ antialias: false });
  renderer.setSize(size, size, false);
  const tracer = new WebGLPathTracer(renderer);
  Object.assign(tracer, {
    bounces: BOUNCES,
    transmissiveBounces: BOUNCES,
    // Smooth glass never joins a path to the light by chance, so importance sampling of the light would only cost it time.
    multipleImportanceSampling: false,
    filterGlossyFactor: 0,
    renderDelay: 0,
    minSamples: 0,
    rasterizeScene: false,
    renderToCanvas: false,
  });
  tracer.tiles.set(1, 1);
  tracer.setScene(sceneOf(count), cameraOf());
  const read = () => {
    const floats = new Float32Array(4 * size * size);
    renderer.readRenderTargetPixels(tracer.target, 0, 0, size, size, floats);
    return floats;
  };
  while (tracer.samples < 1) {
    tracer.renderSample();
    await new Promise((resume) => setTimeout(resume, POLL_MS));
  }
  read();
  const readyMs = performance.now() - started;

  while (tracer.samples < reference) tracer.renderSample();
  const right = read();
  tracer.reset();
  const steps: Step[] = [];
  let ms = 0;
  for (let samples = 1; samples <= most; samples *= 2) {
    const since = performance.now();
    do tracer.renderSample();
    while (tracer.samples < samples);
    read();
    ms += performance.now() - since;
    steps.push({ samples, ms, error: relativeError(read(), right) });
  }
  tracer.dispose();
  renderer.dispose();
  return { steps, readyMs, blocks: blocksOf(right, size) };
}
