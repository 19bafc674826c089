/** A part of an address’s path as it reads; as it is written, where it is not encoded as it should be. */
export function decodedPart(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
