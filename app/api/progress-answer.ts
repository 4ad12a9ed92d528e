import type { StartupProgress } from "@/lib/domain/startup-progress";
import { progressTag } from "@/lib/services/progress";

/** What is watched, or only the word that nothing has changed. */
export function progressAnswer(request: Request, startups: readonly StartupProgress[]): Response {
  const etag = progressTag(startups);
  const headers = { etag, "cache-control": "private, no-cache", vary: "cookie" };
  const known = request.headers.get("if-none-match")?.replace(/^W\//, "");
  return known === etag
    ? new Response(null, { status: 304, headers })
    : Response.json({ startups }, { headers });
}
