import { AppError } from "@/lib/errors";

/**
 * The bytes of a request's body, never more than allowed. The announced length is asked first, so that
 * a large body is refused unread; what arrives is counted as well, because the length may be missing or false.
 *
 * @param tooLarge - What to say and which field to name when there are more.
 * @throws AppError `TOO_LARGE`.
 */
export async function readBodyUpTo(
  request: Request,
  maxBytes: number,
  tooLarge: { readonly field: string; readonly message: string },
): Promise<Uint8Array> {
  const refusal = () => new AppError("TOO_LARGE", tooLarge.message, { fields: [tooLarge] });
  if (Number(request.headers.get("content-length") ?? 0) > maxBytes) throw refusal();
  const chunks: Uint8Array[] = [];
  let size = 0;
  // Leaving the loop by an error cancels the stream.
  for await (const chunk of request.body ?? []) {
    size += chunk.byteLength;
    if (size > maxBytes) throw refusal();
    chunks.push(chunk);
  }
  return new Uint8Array(Buffer.concat(chunks));
}
