import { AppError } from "@/lib/errors";

/**
 * The one file of a multipart upload, refused before it is read when its announced size is too large,
 * and while it is read when it turns out larger than announced.
 *
 * @throws AppError `TOO_LARGE` or `INVALID_INPUT`, naming the field.
 */
export async function readUpload(
  request: Request,
  field: string,
  mostBytes: number,
): Promise<{ readonly file: File; readonly form: FormData }> {
  const announced = Number(request.headers.get("content-length") ?? "0");
  if (announced > mostBytes + OVERHEAD) throw tooLarge(field, mostBytes);
  const limited = new Request(request.url, {
    method: "POST",
    headers: { "content-type": request.headers.get("content-type") ?? "" },
    body: request.body?.pipeThrough(counting(field, mostBytes + OVERHEAD)) ?? null,
    duplex: "half",
  } as RequestInit);
  const form = await readForm(limited, field);
  const file = form.get(field);
  if (!(file instanceof File) || file.size === 0) {
    throw new AppError("INVALID_INPUT", "Choose a file.", {
      fields: [{ field, message: "Choose a file that is not empty." }],
    });
  }
  if (file.size > mostBytes) throw tooLarge(field, mostBytes);
  return { file, form };
}

/** Boundaries and the other fields of the form. */
const OVERHEAD = 64 * 1024;

async function readForm(request: Request, field: string): Promise<FormData> {
  try {
    return await request.formData();
  } catch (error) {
    if (error instanceof AppError) throw error;
    if (error instanceof Error && error.cause instanceof AppError) throw error.cause;
    throw new AppError("INVALID_INPUT", "The upload did not arrive whole. Send the file again.", {
      cause: error,
      fields: [{ field, message: "The upload did not arrive whole. Send the file again." }],
    });
  }
}

function counting(field: string, mostBytes: number): TransformStream<Uint8Array, Uint8Array> {
  let seen = 0;
  return new TransformStream({
    transform(chunk, controller) {
      seen += chunk.byteLength;
      if (seen > mostBytes) controller.error(tooLarge(field, mostBytes));
      else controller.enqueue(chunk);
    },
  });
}

function tooLarge(field: string, mostBytes: number): AppError {
  const message = `The file is larger than ${Math.floor(mostBytes / 1_048_576)} MB. Split it, for instance by month.`;
  return new AppError("TOO_LARGE", message, { fields: [{ field, message }] });
}
