// Bytes as base64 (RFC 4648, section 4) and back, strictly: text that is not written as it would be written here is refused.

/** So many bytes at once, a multiple of 3: a call with all of a picture's bytes as arguments would be too long. */
const CHUNK = 3 * 8_192;
const TEXT = /^(?:[A-Za-z0-9+/]{4})*(?:[A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$/;

export function base64Of(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += CHUNK)
    parts.push(btoa(String.fromCharCode(...bytes.subarray(at, at + CHUNK))));
  return parts.join('');
}

/** The bytes, or null where the text is no base64. */
export function bytesOfBase64(text: string): Uint8Array<ArrayBuffer> | null {
  if (text.length % 4 !== 0 || !TEXT.test(text)) return null;
  const letters = atob(text);
  const bytes = new Uint8Array(letters.length);
  for (let at = 0; at < letters.length; at += 1) bytes[at] = letters.charCodeAt(at);
  return bytes;
}
