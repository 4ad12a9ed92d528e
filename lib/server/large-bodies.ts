import { AppError } from "@/lib/errors";

/** What a form or a phone's picture never reaches; from here on a body is a file to be held in memory. */
const LARGE_BYTES = 2 * 1024 * 1024;
/** A desk sends one log or report at a time, a phone one original. */
const MOST_OF_ONE_PERSON = 3;

const running = new Map<string, number>();

/**
 * Runs what takes a request's body. Of one person only a few large ones are taken at the same time: each is held in
 * memory more than once, and a hundred of them would end the server for every company.
 *
 * @param who - The person who sends it.
 * @throws AppError `UNAVAILABLE`.
 */
export async function takingBody<T>(request: Request, who: string, work: () => Promise<T>): Promise<T> {
  if (!isLarge(request)) return work();
  const others = running.get(who) ?? 0;
  if (others >= MOST_OF_ONE_PERSON) {
    throw new AppError(
      "UNAVAILABLE",
      "You are sending several large files already. Wait until one of them has arrived.",
    );
  }
  running.set(who, others + 1);
  try {
    return await work();
  } finally {
    const left = (running.get(who) ?? 1) - 1;
    if (left === 0) running.delete(who);
    else running.set(who, left);
  }
}

/** A body that does not say how long it is may be as long as it likes. */
function isLarge({ method, headers, body }: Request): boolean {
  if (method === "GET" || method === "HEAD" || body === null) return false;
  const announced = headers.get("content-length");
  return announced === null || !(Number(announced) <= LARGE_BYTES);
}
