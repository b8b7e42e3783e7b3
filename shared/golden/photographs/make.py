"""Writes small photographs without pictures, gives them metadata with exiftool, and asks exiftool what it reads in them."""
import json
import pathlib
import struct
import subprocess

u16, u32 = lambda v: struct.pack(">H", v), lambda v: struct.pack(">I", v)
box = lambda kind, body: u32(len(body) + 8) + kind + body


def heif():
    """One item of a picture, 16 bytes that are none, and the boxes that a HEIF needs around it."""
    picture = bytes(16)
    items = box(b"infe", b"\2\0\0\0" + u16(1) + u16(0) + b"hvc1\0")

    def head(at):
        places = u32(0) + b"\x44\0" + u16(1) + u16(1) + u16(0) + u16(1) + u32(at) + u32(len(picture))
        size = box(b"ipco", box(b"ispe", u32(0) + u32(1) + u32(1))) + box(b"ipma", u32(0) + u32(1) + u16(1) + b"\1\x81")
        handler = box(b"hdlr", u32(0) + u32(0) + b"pict" + bytes(13))
        meta = handler + box(b"pitm", u32(0) + u16(1)) + box(b"iinf", u32(0) + u16(1) + items) + box(b"iloc", places) + box(b"iprp", size)
        return box(b"ftyp", b"heic\0\0\0\0mif1heic") + box(b"meta", u32(0) + meta)

    return head(len(head(0)) + 8) + box(b"mdat", picture)


def tiff():
    """One black pixel."""
    tags = [(256, 3, 1, 1), (257, 3, 1, 1), (258, 3, 1, 8), (262, 3, 1, 1), (273, 4, 1, 8), (278, 3, 1, 1), (279, 4, 1, 1)]
    entries = b"".join(struct.pack("<HHII", *tag) for tag in tags)
    return b"II*\0" + struct.pack("<I", 10) + b"\0\0" + struct.pack("<H", len(tags)) + entries + struct.pack("<I", 0)


JPEG = bytes.fromhex("ffd8ffda0002ffd9")
COMMON = ["-Make=Invented", "-Model=Clock One", "-LensModel=35 mm", "-FocalLength=35", "-FocalLengthIn35mmFormat=53"]
FILES = {
    "dial.jpg": (JPEG, ["-ExposureTime=1/60", "-ShutterSpeedValue=1/60", "-SubjectDistance=2.4", "-DateTimeOriginal=2026:11:20 12:00:00", "-SubSecTimeOriginal=25", "-XMP:Rating=3", "-XMP:Label=Sharp"]),
    "hall.tif": (tiff(), ["-ExposureTime=1.3", "-DateTimeOriginal=2026:11:20 12:00:10", "-XMP:Rating=-1"]),
    "movement.heic": (heif(), ["-ExposureTime=1/8", "-ShutterSpeedValue=1/15", "-DateTimeOriginal=2026:11:20 12:00:20", "-XMP:Rating=5"]),
    "pendulum.jpg": (JPEG, ["-ShutterSpeedValue=1/30", "-FocalPlaneXResolution=2500", "-FocalPlaneResolutionUnit=cm", "-DateTimeOriginal=2026:11:20 12:00:30"]),
}
here = pathlib.Path(".")
for old in [*FILES, "pendulum.xmp"]:
    (here / old).unlink(missing_ok=True)
for name, (bytes_, tags) in FILES.items():
    (here / name).write_bytes(bytes_)
    subprocess.run(["exiftool", "-q", "-overwrite_original", *COMMON, *tags, name], check=True)
subprocess.run(["exiftool", "-q", "-o", "pendulum.xmp", "-XMP:Rating=2"], check=True)
wanted = ["ExposureTime", "ShutterSpeedValue", "FocalLength", "FocalLengthIn35mmFormat", "SubjectDistance", "FocalPlaneXResolution", "DateTimeOriginal", "SubSecTimeOriginal", "Model", "LensModel", "XMP:Rating", "XMP:Label"]
said = subprocess.run(["exiftool", "-j", "-n", *[f"-{tag}" for tag in wanted], *FILES, "pendulum.xmp"], check=True, capture_output=True, text=True)
(here / "expected.json").write_text(json.dumps(json.loads(said.stdout), indent=2) + "\n")
