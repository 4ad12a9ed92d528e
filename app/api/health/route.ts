import { health } from "@/lib/services/health";

export const dynamic = "force-dynamic";

/** For a load balancer or a person: says what works, and nothing about what is inside. */
export async function GET(): Promise<Response> {
  const state = await health();
  const well = state.database === "answers" && state.migrations !== "pending";
  return Response.json(state, { status: well ? 200 : 503, headers: { "cache-control": "no-store" } });
}
