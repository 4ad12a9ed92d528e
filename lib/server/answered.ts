import { failureFacts } from "./failure";
import { refusalAnswer, refusalFor } from "./outcome";
import { log, requestIdFrom } from "./request-log";

/** The frame of every route: the request's id, any error as an answer that is safe to show, and a line in the log. */
export async function answered(
  name: string,
  request: Request,
  work: () => Promise<Response>,
): Promise<Response> {
  const requestId = requestIdFrom(request.headers.get("x-request-id"));
  const started = performance.now();
  const answer = await work().catch((error: unknown) => {
    const refusal = refusalFor(error, requestId);
    if (refusal.code === "UNEXPECTED") log().error({ requestId, route: name, error: failureFacts(error) });
    return refusalAnswer(refusal);
  });
  answer.headers.set("x-request-id", requestId);
  // What says nothing of its own about it is somebody's data, and kept by no proxy and no browser.
  if (!answer.headers.has("cache-control")) answer.headers.set("cache-control", "private, no-store");
  log().info({
    requestId,
    route: name,
    status: answer.status,
    ms: Math.round(performance.now() - started),
  });
  return answer;
}
