/**
 * A film made of pictures by the browser's own encoder: MP4 with H.264 where it can, WebM otherwise. Where it can make neither, the
 * pictures go into one ZIP file, from which any program for films makes one.
 */
import { zipSync } from "fflate";

export interface FilmShape {
  /** Even numbers of pixels. */
  readonly width: number;
  readonly height: number;
  /** A second. */
  readonly rate: number;
}

export type FilmKind = "mp4" | "webm" | "zip";

export interface FilmMaker {
  readonly kind: FilmKind;
  /** Takes the next picture. @throws what the encoder throws */
  readonly add: (picture: OffscreenCanvas) => Promise<void>;
  readonly finish: () => Promise<Blob>;
  /** Lets everything go; after `finish` too. */
  readonly close: () => void;
}

/** Bits for each pixel of each picture: glass shows every block that is saved on. */
const BITS_PER_PIXEL = 0.3;
/** Small films need more for each pixel. */
const LEAST_BITS = 2e6;
/** Pictures between two that stand by themselves, so that a film can be wound to. */
const KEY_EACH = 24;
const SECOND_US = 1e6;
/** Pictures that the encoder may be behind. */
const MOST_WAITING = 4;

/** H.264 High and Main, then Baseline, at levels that hold 1080 x 1920; then VP9 and VP8 (names by the WebCodecs registry). */
const CANDIDATES: readonly {
  readonly kind: "mp4" | "webm";
  readonly codec: string;
  readonly track: string;
}[] = [
  { kind: "mp4", codec: "avc1.640029", track: "avc" },
  { kind: "mp4", codec: "avc1.4d0029", track: "avc" },
  { kind: "mp4", codec: "avc1.42e029", track: "avc" },
  { kind: "webm", codec: "vp09.00.40.08", track: "V_VP9" },
  { kind: "webm", codec: "vp8", track: "V_VP8" },
];
type Candidate = (typeof CANDIDATES)[number];

function configOf({ codec, kind }: Candidate, { width, height, rate }: FilmShape): VideoEncoderConfig {
  const bitrate = Math.max(LEAST_BITS, Math.round(width * height * rate * BITS_PER_PIXEL));
  const avc = kind === "mp4" ? { avc: { format: "avc" as const } } : {};
  return { codec, width, height, framerate: rate, bitrate, ...avc };
}

async function firstSupported(shape: FilmShape): Promise<Candidate | null> {
  if (typeof VideoEncoder === "undefined") return null;
  for (const candidate of CANDIDATES) {
    const answer = await VideoEncoder.isConfigSupported(configOf(candidate, shape)).catch(() => null);
    if (answer?.supported) return candidate;
  }
  return null;
}

interface Track {
  readonly add: (chunk: EncodedVideoChunk, meta?: EncodedVideoChunkMetadata) => void;
  readonly end: () => Blob;
}

async function trackOf({ kind, track }: Candidate, { width, height, rate }: FilmShape): Promise<Track> {
  if (kind === "mp4") {
    const { ArrayBufferTarget, Muxer } = await import("mp4-muxer");
    const target = new ArrayBufferTarget();
    const muxer = new Muxer({
      target,
      video: { codec: "avc", width, height, frameRate: rate },
      fastStart: "in-memory",
    });
    const end = () => {
      muxer.finalize();
      return new Blob([target.buffer], { type: "video/mp4" });
    };
    return { add: (chunk, meta) => muxer.addVideoChunk(chunk, meta), end };
  }
  const { ArrayBufferTarget, Muxer } = await import("webm-muxer");
  const target = new ArrayBufferTarget();
  const muxer = new Muxer({ target, video: { codec: track, width, height, frameRate: rate } });
  const end = () => {
    muxer.finalize();
    return new Blob([target.buffer], { type: "video/webm" });
  };
  return { add: (chunk, meta) => muxer.addVideoChunk(chunk, meta), end };
}

/** Resolves once fewer pictures wait than the encoder may be behind. */
const untilFree = (encoder: VideoEncoder): Promise<void> =>
  encoder.encodeQueueSize < MOST_WAITING
    ? Promise.resolve()
    : new Promise((resolve) => {
        encoder.addEventListener("dequeue", () => resolve(untilFree(encoder)), { once: true });
      });

async function encoded(candidate: Candidate, shape: FilmShape): Promise<FilmMaker> {
  const track = await trackOf(candidate, shape);
  let fault: Error | null = null;
  const encoder = new VideoEncoder({
    output: track.add,
    error: (error) => {
      fault = error;
    },
  });
  encoder.configure(configOf(candidate, shape));
  let k = 0;
  const mustWork = () => {
    if (fault) throw fault;
  };
  return {
    kind: candidate.kind,
    add: async (picture) => {
      mustWork();
      const timestamp = Math.round((k * SECOND_US) / shape.rate);
      const duration = Math.round(((k + 1) * SECOND_US) / shape.rate) - timestamp;
      const frame = new VideoFrame(picture, { timestamp, duration });
      encoder.encode(frame, { keyFrame: k % KEY_EACH === 0 });
      frame.close();
      k++;
      await untilFree(encoder);
      mustWork();
    },
    finish: async () => {
      await encoder.flush();
      mustWork();
      return track.end();
    },
    close: () => {
      if (encoder.state !== "closed") encoder.close();
    },
  };
}

function zipped(): FilmMaker {
  const files: Record<string, Uint8Array> = {};
  return {
    kind: "zip",
    add: async (picture) => {
      const png = await picture.convertToBlob({ type: "image/png" });
      const name = `${String(Object.keys(files).length).padStart(4, "0")}.png`;
      files[name] = new Uint8Array(await png.arrayBuffer());
    },
    // pictures are packed already
    finish: async () => new Blob([zipSync(files, { level: 0 })], { type: "application/zip" }),
    close: () => {},
  };
}

/** The best that this browser can make. */
export async function filmMaker(shape: FilmShape): Promise<FilmMaker> {
  const candidate = await firstSupported(shape);
  return candidate ? encoded(candidate, shape) : zipped();
}

/** What it would be, before anything is traced. */
export const filmKind = async (shape: FilmShape): Promise<FilmKind> =>
  (await firstSupported(shape))?.kind ?? "zip";
