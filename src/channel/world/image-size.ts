/** Width and height of a PNG or GIF from its header; nothing for other files. Source: W3C PNG 3rd ed. §11.2.1; GIF89a §18. */
export function imageSize(
  bytes: Uint8Array,
): { readonly width: number; readonly height: number } | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.byteLength >= 24 && view.getUint32(0) === 0x8950_4e47) {
    return { width: view.getUint32(16), height: view.getUint32(20) };
  }
  if (bytes.byteLength >= 10 && view.getUint32(0) === 0x4749_4638) {
    return { width: view.getUint16(6, true), height: view.getUint16(8, true) };
  }
  return undefined;
}
