import { invalidInput } from "@/lib/errors";
import { readBodyUpTo } from "./limited-body";
import { refuseUnstorableText } from "./storable-text";

/**
 * The JSON body of a request, of a size no honest sender exceeds.
 *
 * @throws AppError `TOO_LARGE`, or `INVALID_INPUT` when it did not arrive whole.
 */
export async function readJson(
  request: Request,
  mostBytes: number,
  field: string,
  damaged = "This upload arrived damaged. Send it again.",
): Promise<unknown> {
  const tooLarge = { field, message: "This upload is too large. Send less at once." };
  const bytes = await readBodyUpTo(request, mostBytes, tooLarge);
  let body: unknown;
  try {
    body = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw invalidInput([{ field: "body", message: damaged }]);
  }
  refuseUnstorableText(body);
  return body;
}
