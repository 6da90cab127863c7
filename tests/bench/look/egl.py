"""Runs the tracer's shaders offscreen on a real graphics card, through EGL and GLES (ctypes and numpy).

usage: egl.py JOBS.json OUT

JOBS.json, as written by `emit.ts`: {"shaders": {name: text}, "jobs": [{name, vertex, fragments: {channels: name}, resolve?, display?, uniforms, blocks,
textures, sizes: [[w, h]], passes: [{channels, uniforms, half, readsMap, map: [the same]}], map?: {fragments, sides: [one a size], inner: [likewise], smooth, steps, ground}, samples: [first half, second half], picture?, dump?}]}. Each pass reads the sum of its
half and that of the other one, and writes a third float texture, as the app does; with a table, the passes of `map` come before it, over the light map,
of which either reads its own half where `readsMap`, and which go over all of it where `isWhole`, else over its inner square; after one with `smooths` the map's halves are smoothed. Prints for each size milliseconds a pass and million samples a second,
and milliseconds that smoothing the picture takes;
with `picture`, writes the finished picture as PNG to OUT as well, with `dump` the sum of all samples as raw floats. All numbers also go to OUT/egl.json.
"""
import ctypes as C
import json
import os
import struct
import sys
import time
import zlib

import numpy as np

egl, gl = C.CDLL("libEGL.so.1"), C.CDLL("libGLESv2.so.2")
egl.eglGetProcAddress.restype, egl.eglGetProcAddress.argtypes = C.c_void_p, [C.c_char_p]
egl.eglInitialize.argtypes = [C.c_void_p] * 3
egl.eglChooseConfig.argtypes = [C.c_void_p, C.c_void_p, C.c_void_p, C.c_int, C.c_void_p]
egl.eglCreateContext.argtypes, egl.eglCreateContext.restype = [C.c_void_p] * 4, C.c_void_p
egl.eglMakeCurrent.argtypes = [C.c_void_p] * 4
gl.glGetString.restype = C.c_char_p

TEXTURE_2D, FRAMEBUFFER, UNIFORM_BUFFER = 0x0DE1, 0x8D40, 0x8A11
READ_FRAMEBUFFER, SCISSOR_TEST, COLOR_BUFFER_BIT, NEAREST, LINEAR = 0x8CA8, 0x0C11, 0x4000, 0x2600, 0x2601
RGBA, FLOAT, UNSIGNED_BYTE, RGBA32F, RGBA16F, RGBA8 = 0x1908, 0x1406, 0x1401, 0x8814, 0x881A, 0x8058


def extension(name, result, *arguments):
    return C.CFUNCTYPE(result, *arguments)(egl.eglGetProcAddress(name))


def open_context():
    """Makes a surfaceless GLES 3 context current on the first device that offers one."""
    devices, count = (C.c_void_p * 16)(), C.c_int()
    extension(b"eglQueryDevicesEXT", C.c_int, C.c_int, C.c_void_p, C.c_void_p)(16, devices, C.byref(count))
    platform_display = extension(b"eglGetPlatformDisplayEXT", C.c_void_p, C.c_uint, C.c_void_p, C.c_void_p)
    major, minor = C.c_int(), C.c_int()
    for device in devices[: count.value]:
        display = platform_display(0x313F, device, None)
        if display and egl.eglInitialize(display, C.byref(major), C.byref(minor)):
            break
    else:
        sys.exit("no EGL device could be initialised")
    egl.eglBindAPI(0x30A0)
    wanted, config, found = (C.c_int * 5)(0x3033, 1, 0x3040, 0x40, 0x3038), C.c_void_p(), C.c_int()
    egl.eglChooseConfig(display, wanted, C.byref(config), 1, C.byref(found))
    context = egl.eglCreateContext(display, config, None, (C.c_int * 3)(0x3098, 3, 0x3038))
    if not context or not egl.eglMakeCurrent(display, None, None, context):
        sys.exit("no GLES 3 context")


def compile_stage(kind, name, text):
    shader, source, ok = gl.glCreateShader(kind), C.c_char_p(text.encode()), C.c_int()
    gl.glShaderSource(shader, 1, C.byref(source), None)
    gl.glCompileShader(shader)
    gl.glGetShaderiv(shader, 0x8B81, C.byref(ok))
    if not ok.value:
        log = C.create_string_buffer(8000)
        gl.glGetShaderInfoLog(shader, 8000, None, log)
        sys.exit(f"{name}: {log.value.decode()}")
    return shader


def link(shaders, vertex, fragment):
    program, ok = gl.glCreateProgram(), C.c_int()
    gl.glAttachShader(program, compile_stage(0x8B31, vertex, shaders[vertex]))
    gl.glAttachShader(program, compile_stage(0x8B30, fragment, shaders[fragment]))
    gl.glLinkProgram(program)
    gl.glGetProgramiv(program, 0x8B82, C.byref(ok))
    if not ok.value:
        sys.exit(f"{fragment} does not link")
    return program


def place(program, name):
    return gl.glGetUniformLocation(program, name.encode())


def set_uniforms(program, table):
    for name, uniform in table.items():
        at, kind, value = place(program, name), uniform["kind"], uniform["value"]
        if at < 0:
            continue
        if kind == "int":
            gl.glUniform1i(at, int(value))
        elif kind == "uint":
            gl.glUniform1ui(at, C.c_uint(int(value)))
        elif kind == "float":
            gl.glUniform1f(at, C.c_float(value))
        else:
            floats = (C.c_float * len(value))(*value)
            if kind == "mat3":
                gl.glUniformMatrix3fv(at, 1, 0, floats)
            else:
                size = int(kind[-1])
                getattr(gl, f"glUniform{size}fv")(at, len(value) // size, floats)


def make_texture(width, height, data, form=RGBA32F, kind=FLOAT, between=NEAREST):
    texture = C.c_uint()
    gl.glGenTextures(1, C.byref(texture))
    gl.glBindTexture(TEXTURE_2D, texture)
    pixels = np.asarray(data, np.float32).ctypes.data_as(C.c_void_p) if data is not None else None
    gl.glTexImage2D(TEXTURE_2D, 0, form, width, height, 0, RGBA, kind, pixels)
    for name, value in ((0x2801, between), (0x2800, between), (0x2802, 0x812F), (0x2803, 0x812F)):
        gl.glTexParameteri(TEXTURE_2D, name, value)
    return texture


def make_target(width, height, form=RGBA32F, kind=FLOAT):
    texture, framebuffer = make_texture(width, height, None, form, kind), C.c_uint()
    gl.glGenFramebuffers(1, C.byref(framebuffer))
    gl.glBindFramebuffer(FRAMEBUFFER, framebuffer)
    gl.glFramebufferTexture2D(FRAMEBUFFER, 0x8CE0, TEXTURE_2D, texture, 0)
    if gl.glCheckFramebufferStatus(FRAMEBUFFER) != 0x8CD5:
        sys.exit("this card can't draw to the target")
    return texture, framebuffer


def bind_scene(program, job):
    """Uniform blocks and textures of a scene; the sum has texture unit 0, the guess 1, the light map 2."""
    for binding, (name, floats) in enumerate(job["blocks"].items()):
        block = gl.glGetUniformBlockIndex(program, name.encode())
        if block == 0xFFFFFFFF:
            continue
        gl.glUniformBlockBinding(program, block, binding)
        buffer, data = C.c_uint(), np.asarray(floats, np.float32)
        gl.glGenBuffers(1, C.byref(buffer))
        gl.glBindBuffer(UNIFORM_BUFFER, buffer)
        gl.glBufferData(UNIFORM_BUFFER, C.c_ssize_t(data.nbytes), data.ctypes.data_as(C.c_void_p), 0x88E4)
        gl.glBindBufferBase(UNIFORM_BUFFER, binding, buffer)
    for unit, (name, texels) in enumerate(job["textures"].items(), 3):
        gl.glActiveTexture(0x84C0 + unit)
        make_texture(texels["width"], texels["height"], texels["rgba"])
        gl.glUniform1i(place(program, name), unit)
    gl.glActiveTexture(0x84C0)
    gl.glUniform1i(place(program, "sumSoFar"), 0)
    gl.glUniform1i(place(program, "guessSum"), 1)
    gl.glUniform1i(place(program, "lightMap"), 2)


class Sum:
    """The sums of a picture's two halves in float textures that take turns with a third, which is drawn to next."""

    def __init__(self, width, height):
        self.size = width, height
        self.targets = [make_target(width, height) for _ in range(3)]
        self.halves = [0, 1]

    def bind(self, units):
        for unit, half in units:
            gl.glActiveTexture(0x84C0 + unit)
            gl.glBindTexture(TEXTURE_2D, self.targets[self.halves[half]][0])
        gl.glActiveTexture(0x84C0)

    def begin_pass(self, half):
        self.back = next(k for k in range(3) if k not in self.halves)
        self.bind(((1, 1 - half), (0, half)))
        gl.glBindFramebuffer(FRAMEBUFFER, self.targets[self.back][1])

    def end_pass(self, half):
        self.halves[half] = self.back

    def carry_over(self, half):
        """Brings to what is drawn to what stays as it is."""
        width, height = self.size
        gl.glBindFramebuffer(READ_FRAMEBUFFER, self.targets[self.halves[half]][1])
        gl.glBlitFramebuffer(0, 0, width, height, 0, 0, width, height, COLOR_BUFFER_BIT, NEAREST)
        gl.glBindFramebuffer(FRAMEBUFFER, self.targets[self.back][1])

    def dispose(self):
        for texture, framebuffer in self.targets:
            gl.glDeleteTextures(1, C.byref(texture))
            gl.glDeleteFramebuffers(1, C.byref(framebuffer))


# Commands given without waiting must stay well under the seconds after which a driver takes a card for hung.
PASSES_AT_ONCE = 4


class LightMap(Sum):
    """The sums of a light map, and its halves smoothed step by step."""

    def __init__(self, job, program, side, inner):
        super().__init__(side, side)
        self.inner = inner
        self.steps, self.ground, self.program = job["map"]["steps"], job["map"]["ground"], program
        self.nothing = make_texture(1, 1, [0, 0, 0, 0])
        self.smoothed = []
        for _ in self.steps:
            textures, framebuffer = [make_texture(side, side, None, RGBA16F, between=LINEAR) for _ in range(2)], C.c_uint()
            gl.glGenFramebuffers(1, C.byref(framebuffer))
            gl.glBindFramebuffer(FRAMEBUFFER, framebuffer)
            for k, texture in enumerate(textures):
                gl.glFramebufferTexture2D(FRAMEBUFFER, 0x8CE0 + k, TEXTURE_2D, texture, 0)
            gl.glDrawBuffers(2, (C.c_uint * 2)(0x8CE0, 0x8CE1))
            self.smoothed.append((textures, framebuffer))

    def bind_for(self, one):
        texture = self.smoothed[-1][0][one["half"]] if one["readsMap"] else self.nothing
        gl.glActiveTexture(0x84C0 + 2)
        gl.glBindTexture(TEXTURE_2D, texture)
        gl.glActiveTexture(0x84C0)

    def smooth(self, how):
        """From which halves, each with its samples, and in how many steps all neighbours count alike."""
        gl.glUseProgram(self.program)
        gl.glViewport(0, 0, *self.size)
        source = [self.targets[self.halves[half]][0] for half, _ in how["from"]]
        samples = [count for _, count in how["from"]]
        for step, ((textures, framebuffer), apart) in enumerate(zip(self.smoothed, self.steps)):
            for unit in (1, 0):
                gl.glActiveTexture(0x84C0 + unit)
                gl.glBindTexture(TEXTURE_2D, source[unit])
            set_uniforms(self.program, {
                "firstSum": {"kind": "int", "value": 0}, "secondSum": {"kind": "int", "value": 1},
                "firstSamples": {"kind": "float", "value": samples[0]}, "secondSamples": {"kind": "float", "value": samples[1]},
                "apart": {"kind": "int", "value": apart}, "ground": self.ground,
                "blind": {"kind": "int", "value": int(step < how["blind"])},
            })
            gl.glBindFramebuffer(FRAMEBUFFER, framebuffer)
            gl.glDrawArrays(4, 0, 3)
            source, samples = textures, (1, 1)

    def dispose(self):
        super().dispose()
        for textures, framebuffer in self.smoothed:
            gl.glDeleteFramebuffers(1, C.byref(framebuffer))
            for texture in textures:
                gl.glDeleteTextures(1, C.byref(texture))


def draw(programs, total, one, light_map):
    """One pass over `total`, which may be the light map itself."""
    program = programs[str(one["channels"])]
    gl.glUseProgram(program)
    total.begin_pass(one["half"])
    if light_map:
        light_map.bind_for(one)
    gl.glViewport(0, 0, *total.size)
    set_uniforms(program, one["uniforms"])
    is_whole = one.get("isWhole", True)
    if not is_whole:
        total.carry_over(one["half"])
        gl.glEnable(SCISSOR_TEST)
        gl.glScissor(*(total.inner[name] for name in ("x", "y", "width", "height")))
    gl.glDrawArrays(4, 0, 3)
    if not is_whole:
        gl.glDisable(SCISSOR_TEST)
    total.end_pass(one["half"])


def trace(programs, map_programs, total, light_map, passes, first=0):
    """Draws passes, each after those that are due over the light map, and waits for the last one."""
    for k, one in enumerate(passes, first):
        if light_map:
            for before in one["map"]:
                draw(map_programs, light_map, before, light_map)
                if "smooths" in before:
                    light_map.smooth(before["smooths"])
        draw(programs, total, one, light_map)
        if k % PASSES_AT_ONCE == 0:
            gl.glFinish()
    gl.glReadPixels(0, 0, 1, 1, RGBA, FLOAT, (C.c_float * 4)())


def time_draws(count):
    """Milliseconds a draw takes, over so many of them, after a first one that warms up."""
    for times in (1, count):
        gl.glFinish()
        started = time.perf_counter()
        for _ in range(times):
            gl.glDrawArrays(4, 0, 3)
        gl.glFinish()
        ms = 1e3 * (time.perf_counter() - started) / times
    return ms


def resolve(job, shaders, total, width, height):
    """Makes the picture that shows of both halves; answers its texture and milliseconds."""
    program = link(shaders, job["vertex"], job["resolve"])
    gl.glUseProgram(program)
    texture, framebuffer = make_target(width, height, RGBA16F)
    first, second = job["samples"]
    set_uniforms(program, {
        "firstSum": {"kind": "int", "value": 0}, "secondSum": {"kind": "int", "value": 1},
        "firstSamples": {"kind": "float", "value": first}, "secondSamples": {"kind": "float", "value": second},
        "smooths": {"kind": "int", "value": int(first == second)}, "apart": {"kind": "int", "value": 1},
    })
    gl.glBindFramebuffer(FRAMEBUFFER, framebuffer)
    total.bind(((1, 1), (0, 0)))
    ms = time_draws(8)
    gl.glDeleteProgram(program)
    gl.glDeleteFramebuffers(1, C.byref(framebuffer))
    return texture, ms


def png(rgb):
    """Bytes of a PNG, from height x width x 3 bytes. Portable Network Graphics, W3C Recommendation, 2003."""
    height, width, _ = rgb.shape
    rows = np.zeros((height, 1 + 3 * width), np.uint8)
    rows[:, 1:] = rgb.reshape(height, -1)

    def chunk(kind, data):
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows.tobytes())) + chunk(b"IEND", b"")


def save_picture(job, shaders, texture, width, height, path):
    program = link(shaders, job["vertex"], job["display"])
    gl.glUseProgram(program)
    make_and_bind = make_target(width, height, RGBA8, UNSIGNED_BYTE)
    set_uniforms(program, {
        "leftPicture": {"kind": "int", "value": 0}, "rightPicture": {"kind": "int", "value": 0},
        "resolution": {"kind": "vec2", "value": [width, height]}, "exposure": {"kind": "float", "value": job["picture"]["exposure"]},
        "gain": {"kind": "vec3", "value": job["picture"].get("gain", [1, 1, 1])}, "page": {"kind": "vec4", "value": [0, 0, 0, 0]},
        "dividerX": {"kind": "float", "value": width}, "sideBySide": {"kind": "int", "value": 0},
    })
    gl.glBindFramebuffer(FRAMEBUFFER, make_and_bind[1])
    gl.glBindTexture(TEXTURE_2D, texture)
    gl.glDrawArrays(4, 0, 3)
    shown = np.empty((height, width, 4), np.uint8)
    gl.glReadPixels(0, 0, width, height, RGBA, UNSIGNED_BYTE, shown.ctypes.data_as(C.c_void_p))
    ground = np.array(job["picture"]["ground"], np.float32)
    alpha = shown[::-1, :, 3:].astype(np.float32) / 255
    rgb = shown[::-1, :, :3].astype(np.float32) + (1 - alpha) * ground
    with open(path, "wb") as file:
        file.write(png(np.clip(rgb + 0.5, 0, 255).astype(np.uint8)))


def read_sum(job, total, width, height):
    """Sum over the samples of both halves, RGBA floats, rows bottom to top."""
    pixels = np.zeros((height, width, 4), np.float32)
    for half, samples in enumerate(job["samples"]):
        if samples == 0:
            continue
        part = np.empty((height, width, 4), np.float32)
        gl.glBindFramebuffer(FRAMEBUFFER, total.targets[total.halves[half]][1])
        gl.glReadPixels(0, 0, width, height, RGBA, FLOAT, part.ctypes.data_as(C.c_void_p))
        pixels += part
    return pixels


def run(job, shaders, out):
    started = time.perf_counter()
    programs, map_programs = (
        {channels: link(shaders, job["vertex"], name) for channels, name in fragments.items()}
        for fragments in (job["fragments"], job.get("map", {}).get("fragments", {}))
    )
    smoother = link(shaders, job["vertex"], job["map"]["smooth"]) if map_programs else None
    every = [*programs.values(), *map_programs.values()]
    gl.glFinish()
    answer = {"name": job["name"], "compileMs": round(1e3 * (time.perf_counter() - started), 1), "sizes": []}
    for program in every:
        gl.glUseProgram(program)
        set_uniforms(program, job["uniforms"])
        bind_scene(program, job)
    for program in map_programs.values():
        gl.glUseProgram(program)
        # from a table no page is seen
        set_uniforms(program, {"behind": {"kind": "int", "value": 2}})
    for k, (width, height) in enumerate(job["sizes"]):
        total = Sum(width, height)
        light_map = LightMap(job, smoother, job["map"]["sides"][k], job["map"]["inner"][k]) if map_programs else None
        gl.glViewport(0, 0, width, height)
        for program in programs.values():
            gl.glUseProgram(program)
            set_uniforms(program, {"resolution": {"kind": "vec2", "value": [width, height]}})
        warm = 4
        trace(programs, map_programs, total, light_map, job["passes"][:warm])
        started = time.perf_counter()
        trace(programs, map_programs, total, light_map, job["passes"][warm:], warm)
        ms = 1e3 * (time.perf_counter() - started) / (len(job["passes"]) - warm)
        rate = width * height / ms / 1e3
        answer["sizes"].append({"size": f"{width}x{height}", "ms": round(ms, 4), "megaSamples": round(rate, 1)})
        print(f"{job['name']:44} {width}x{height}  {ms:8.3f} ms a pass  {rate:8.0f} M samples/s", flush=True)
        if job.get("resolve"):
            texture, resolve_ms = resolve(job, shaders, total, width, height)
            answer["sizes"][-1]["resolveMs"] = round(resolve_ms, 4)
            print(f"{'':44} {width}x{height}  {resolve_ms:8.3f} ms to resolve", flush=True)
            if job.get("picture"):
                save_picture(job, shaders, texture, width, height, os.path.join(out, job["picture"]["file"]))
            gl.glDeleteTextures(1, C.byref(texture))
        if job.get("dump"):
            read_sum(job, total, width, height).tofile(os.path.join(out, job["dump"]))
        total.dispose()
        if light_map:
            light_map.dispose()
    for program in every:
        gl.glDeleteProgram(program)
    return answer


MULTIPLY = """#version 300 es
precision highp float;
uniform vec4 k;
out vec4 sum;
void main() {
  vec4 a = gl_FragCoord * 1e-3;
  vec4 b = a + 1.0;
  vec4 c = a + 2.0;
  vec4 d = a + 3.0;
  for (int i = 0; i < 512; i++) {
    a = a * k.x + k.y;
    b = b * k.x + k.y;
    c = c * k.x + k.y;
    d = d * k.x + k.y;
  }
  sum = a + b + c + d;
}
"""


def fragment_speed(vertex):
    """Thousand million multiplications and additions a second in fragment shaders, to tell which cards a run speaks for: cards
    built for computing may have few units that can draw."""
    program = link({"vertex": vertex, "multiply": MULTIPLY}, "vertex", "multiply")
    gl.glUseProgram(program)
    set_uniforms(program, {"k": {"kind": "vec4", "value": [0.999, 0.001, 0, 0]}})
    width, height = 1920, 1080
    texture, framebuffer = make_target(width, height)
    gl.glBindFramebuffer(FRAMEBUFFER, framebuffer)
    gl.glViewport(0, 0, width, height)
    ms = time_draws(20)
    gl.glDeleteFramebuffers(1, C.byref(framebuffer))
    gl.glDeleteTextures(1, C.byref(texture))
    return width * height * 512 * 16 * 2 / ms / 1e6


def main(jobs_path, out):
    plan = json.load(open(jobs_path))
    os.makedirs(out, exist_ok=True)
    open_context()
    card = gl.glGetString(0x1F01).decode()
    print("card:", card, "|", gl.glGetString(0x1F02).decode())
    vertex_array = C.c_uint()
    gl.glGenVertexArrays(1, C.byref(vertex_array))
    gl.glBindVertexArray(vertex_array)
    speed = round(fragment_speed(plan["shaders"]["screen.vert"]))
    print(f"fragment shaders: {speed} GFLOPS")
    answers = [run(job, plan["shaders"], out) for job in plan["jobs"]]
    json.dump({"card": card, "fragmentGflops": speed, "jobs": answers}, open(os.path.join(out, "egl.json"), "w"), indent=1)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
