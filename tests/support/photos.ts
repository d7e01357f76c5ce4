/** Invented pictures, small and whole in their outer form. The place they hold is 51° 28′ 38″ N, as a phone writes it. */

const segment = (marker: number, body: Buffer): Buffer => {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
};

const exif = (orientation: number): Buffer => {
  const tiff = Buffer.alloc(64);
  tiff.write("II", 0, "latin1");
  tiff.writeUInt16LE(42, 2);
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(2, 8);
  // Orientation, then the pointer to the place (GPS IFD).
  tiff.writeUInt16LE(0x0112, 10);
  tiff.writeUInt16LE(3, 12);
  tiff.writeUInt32LE(1, 14);
  tiff.writeUInt16LE(orientation, 18);
  tiff.writeUInt16LE(0x8825, 22);
  tiff.write("GPS51.4772", 40, "latin1");
  return Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff]);
};

export type JpegChange = { readonly orientation?: number; readonly after?: string; readonly frame?: number };

export const jpeg = (width: number, height: number, change: JpegChange = {}): Uint8Array => {
  const frame = Buffer.alloc(15);
  frame.set([8, 0, 0, 0, 0, 3, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0]);
  frame.writeUInt16BE(height, 1);
  frame.writeUInt16BE(width, 3);
  return Uint8Array.from(
    Buffer.concat([
      Buffer.from([0xff, 0xd8]),
      segment(0xe0, Buffer.from("JFIF\0\x01\x01\0\0\x01\0\x01\0\0", "latin1")),
      segment(0xe1, exif(change.orientation ?? 1)),
      segment(0xe1, Buffer.from("http://ns.adobe.com/xap/1.0/\0<x>GPS51.4772</x>", "latin1")),
      segment(0xe2, Buffer.from("ICC_PROFILE\0\x01\x01colours", "latin1")),
      segment(0xe2, Buffer.from("MPF\0GPS51.4772", "latin1")),
      segment(0xfe, Buffer.from("taken by A. Person", "latin1")),
      segment(0xdb, Buffer.alloc(65, 1)),
      segment(change.frame ?? 0xc0, frame),
      segment(0xda, Buffer.from([3, 1, 0, 2, 0x11, 3, 0x11, 0, 0x3f, 0])),
      Buffer.from([0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56]),
      Buffer.from([0xff, 0xd9]),
      Buffer.from(change.after ?? "", "latin1"),
    ]),
  );
};

const chunk = (type: string, data: Buffer): Buffer => {
  const head = Buffer.alloc(8);
  head.write(type, 0, "latin1");
  head.writeUInt32LE(data.length, 4);
  return Buffer.concat([head, data, Buffer.alloc(data.length % 2)]);
};

/** Of the kind without loss: 14 bits of width − 1, 14 bits of height − 1. */
export const webp = (
  width: number,
  height: number,
  more: readonly (readonly [string, string])[] = [],
): Uint8Array => {
  const picture = Buffer.alloc(12);
  picture[0] = 0x2f;
  picture.writeUInt32LE((width - 1) | ((height - 1) << 14), 1);
  const extended = Buffer.alloc(10);
  extended[0] = 0b1100;
  const body = Buffer.concat([
    Buffer.from("WEBP", "latin1"),
    chunk("VP8X", extended),
    chunk("VP8L", picture),
    ...more.map(([type, text]) => chunk(type, Buffer.from(text, "latin1"))),
  ]);
  const head = Buffer.alloc(8);
  head.write("RIFF", 0, "latin1");
  head.writeUInt32LE(body.length, 4);
  return Uint8Array.from(Buffer.concat([head, body]));
};
