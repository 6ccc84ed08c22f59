/** What a picture's bytes say of themselves: its kind and its size. */

export interface Picture {
  readonly type: "png" | "jpg" | "gif" | "svg";
  /** In pixels; absent for a drawing. */
  readonly size?: { readonly width: number; readonly height: number };
}

/** Absent for bytes that are no picture of these kinds. */
export function pictureOf(bytes: Uint8Array): Picture | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const starts = (...signs: number[]) => signs.every((sign, at) => bytes[at] === sign);
  // PNG (RFC 2083, 3.1 and 4.1.1) and GIF89a (section 18) have their size at a fixed place.
  if (starts(0x89, 0x50, 0x4e, 0x47) && bytes.length >= 24) {
    return { type: "png", size: { width: view.getUint32(16), height: view.getUint32(20) } };
  }
  if (starts(0x47, 0x49, 0x46, 0x38) && bytes.length >= 10) {
    return { type: "gif", size: { width: view.getUint16(6, true), height: view.getUint16(8, true) } };
  }
  if (starts(0xff, 0xd8)) return { type: "jpg", ...sizeOfJpeg(view) };
  const start = String.fromCharCode(...bytes.subarray(0, 400));
  return /<svg[\s>]/.test(start) ? { type: "svg" } : undefined;
}

/** From the first frame's header (ITU-T T.81, B.2.2), found by walking the segments. */
function sizeOfJpeg(view: DataView): Pick<Picture, "size"> {
  for (let at = 2; at + 9 < view.byteLength; at += 2 + view.getUint16(at + 2)) {
    if (view.getUint8(at) !== 0xff) return {};
    const marker = view.getUint8(at + 1);
    const isFrame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (isFrame) return { size: { width: view.getUint16(at + 7), height: view.getUint16(at + 5) } };
  }
  return {};
}

const mimeTypes = { png: "image/png", jpg: "image/jpeg", gif: "image/gif", svg: "image/svg+xml" };

export function dataUri(bytes: Uint8Array): string {
  const type = pictureOf(bytes)?.type;
  let text = "";
  // In pieces: a call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return `data:${type ? mimeTypes[type] : "application/octet-stream"};base64,${btoa(text)}`;
}
