export async function bookDocx(_: unknown): Promise<Uint8Array> {
  return new Uint8Array();
}
