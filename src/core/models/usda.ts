/**
 * The piece as a layer of Universal Scene Description in its text form (Pixar, OpenUSD, "Usda File Format"; materials by the
 * UsdPreviewSurface proposal 2.x). One mesh in metres, y up, standing on y = 0, a subset of its faces for each kind of surface.
 */
import { colourThrough } from "../optics/casing.ts";
import { ROUGHNESS } from "../optics/finish.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "../optics/glasses.ts";
import type { Piece, Plan } from "../plan/document.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { notShown } from "./not-shown.ts";
import type { PieceMesh } from "./piece-mesh.ts";
import { type Primitive, SURFACES, type Surface, uprightSurfaces } from "./upright-surfaces.ts";

/**
 * How much of what is behind a surface it hides. The format's glass neither refracts nor throws back inside: with nothing hidden
 * a piece could hardly be seen. Stated choices, no source.
 */
const OPACITY: Readonly<Record<Surface, number>> = {
  skin: 0.2,
  polished: 0.2,
  prepolished: 0.5,
  ground: 0.8,
};

/** The format's roughness is squared to get the GGX alpha that finishes are stated in. */
const roughness = (surface: Surface): number => (surface === "skin" ? 0 : Math.sqrt(ROUGHNESS[surface]));

/** Text as a quoted value: one line, whole characters, nothing that ends it early. */
function quoted(text: string): string {
  const plain = text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must go
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, " ")
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, "\ufffd");
  return `"${plain.replace(/[\\"]/g, (c) => `\\${c}`)}"`;
}

/** Nine digits hold all of single precision. */
const digits = (x: number): string => `${Number(x.toPrecision(9)) + 0}`;

function points(values: readonly number[], write: (x: number) => string): string {
  const triples: string[] = [];
  for (let i = 0; i < values.length; i += 3)
    triples.push(`(${write(values[i])}, ${write(values[i + 1])}, ${write(values[i + 2])})`);
  return `[${triples.join(", ")}]`;
}

/** A normal needs no more digits than shading can tell apart. */
const short = (x: number): string => `${Number(x.toFixed(5)) + 0}`;

interface Body {
  readonly positions: number[];
  readonly normals: number[];
  readonly indices: number[];
  /** Positions of the triangles of each surface that is there. */
  readonly faces: Map<Surface, readonly number[]>;
}

/** All surfaces in one mesh, one after another. */
function joined(surfaces: ReadonlyMap<Surface, Primitive>): Body {
  const body: Body = { positions: [], normals: [], indices: [], faces: new Map() };
  for (const surface of SURFACES) {
    const own = surfaces.get(surface);
    if (!own) continue;
    const first = body.positions.length / 3;
    const face = body.indices.length / 3;
    body.faces.set(
      surface,
      Array.from({ length: own.indices.length / 3 }, (_, i) => face + i),
    );
    for (const p of own.positions) body.positions.push(Math.fround(p));
    for (const n of own.normals) body.normals.push(n);
    for (const i of own.indices) body.indices.push(first + i);
  }
  return body;
}

const materialPath = (surface: Surface): string => `/Piece/Materials/${surface}`;

function subset(surface: Surface, faces: readonly number[]): string {
  return `        def GeomSubset "${surface}" (
            prepend apiSchemas = ["MaterialBindingAPI"]
        )
        {
            uniform token elementType = "face"
            uniform token familyName = "materialBind"
            int[] indices = [${faces.join(", ")}]
            rel material:binding = <${materialPath(surface)}>
        }`;
}

function material(surface: Surface, piece: Piece): string {
  const path = `${materialPath(surface)}/Surface`;
  const ior = indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM);
  return `        def Material "${surface}"
        {
            token outputs:surface.connect = <${path}.outputs:surface>

            def Shader "Surface"
            {
                uniform token info:id = "UsdPreviewSurface"
                color3f inputs:diffuseColor = (${colourThrough(piece).map(short).join(", ")})
                float inputs:metallic = 0
                float inputs:roughness = ${short(roughness(surface))}
                float inputs:ior = ${short(ior)}
                float inputs:opacity = ${OPACITY[surface]}
                token outputs:surface
            }
        }`;
}

/** What the file says about itself. */
function about(plan: Plan): string {
  return `Made with Glintwright, true size in metres. Not shown: ${notShown("usdz", plan).join("; ")}.`;
}

function extentOf(positions: readonly number[]): { least: number[]; most: number[] } {
  const [least, most] = [[0, 1, 2].map(() => Infinity), [0, 1, 2].map(() => -Infinity)];
  positions.forEach((x, i) => {
    least[i % 3] = Math.min(least[i % 3], x);
    most[i % 3] = Math.max(most[i % 3], x);
  });
  return { least, most };
}

/** @param mesh of this plan, in metres */
export function usdaOf(mesh: PieceMesh, solved: SolvedPlan): string {
  const { plan } = solved;
  const body = joined(uprightSurfaces(mesh, solved));
  const { least, most } = extentOf(body.positions);
  const present = SURFACES.filter((surface) => body.faces.has(surface));
  return `#usda 1.0
(
    customLayerData = {
        string creator = "Glintwright"
    }
    defaultPrim = "Piece"
    doc = ${quoted(about(plan))}
    metersPerUnit = 1
    upAxis = "Y"
)

def Xform "Piece" (
    assetInfo = {
        string name = ${quoted(plan.name)}
    }
    kind = "component"
)
{
    double3 xformOp:translate = (0, ${digits(-least[1])}, 0)
    uniform token[] xformOpOrder = ["xformOp:translate"]

    def Mesh "Body" (
        prepend apiSchemas = ["MaterialBindingAPI"]
    )
    {
        float3[] extent = ${points([...least, ...most], digits)}
        int[] faceVertexCounts = [${body.indices
          .filter((_, i) => i % 3 === 0)
          .map(() => 3)
          .join(", ")}]
        int[] faceVertexIndices = [${body.indices.join(", ")}]
        normal3f[] normals = ${points(body.normals, short)} (
            interpolation = "vertex"
        )
        point3f[] points = ${points(body.positions, digits)}
        uniform token subdivisionScheme = "none"
        rel material:binding = <${materialPath(present[0])}>

${present.map((surface) => subset(surface, body.faces.get(surface) ?? [])).join("\n\n")}
    }

    def Scope "Materials"
    {
${present.map((surface) => material(surface, plan.piece)).join("\n\n")}
    }
}
`;
}
