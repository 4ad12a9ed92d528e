import { AppError } from "@/lib/errors";
import { readBodyUpTo } from "./limited-body";

/** Boundaries and the other fields of the form. */
const OVERHEAD = 64 * 1024;

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
  advice = "Split it, for instance by month.",
): Promise<{ readonly file: File; readonly form: FormData }> {
  const message = `The file is larger than ${Math.floor(mostBytes / 1_048_576)} MB. ${advice}`;
  const form = await readForm(request, mostBytes + OVERHEAD, { field, message });
  const file = form.get(field);
  if (!(file instanceof File) || file.size === 0) {
    throw new AppError("INVALID_INPUT", "Choose a file.", {
      fields: [{ field, message: "Choose a file that is not empty." }],
    });
  }
  if (file.size > mostBytes) throw new AppError("TOO_LARGE", message, { fields: [{ field, message }] });
  return { file, form };
}

async function readForm(
  request: Request,
  mostBytes: number,
  tooLarge: { readonly field: string; readonly message: string },
): Promise<FormData> {
  try {
    const body = Buffer.from(await readBodyUpTo(request, mostBytes, tooLarge));
    const headers = { "content-type": request.headers.get("content-type") ?? "" };
    return await new Response(body, { headers }).formData();
  } catch (error) {
    if (error instanceof AppError) throw error;
    const message = "The upload did not arrive whole. Send the file again.";
    throw new AppError("INVALID_INPUT", message, {
      cause: error,
      fields: [{ field: tooLarge.field, message }],
    });
  }
}
