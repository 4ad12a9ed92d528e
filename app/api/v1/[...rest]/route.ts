import { noSuchCall } from "@/lib/server/api-route";

/** A mistyped address is refused in the shape of every other refusal, not by a page. */
export const GET = noSuchCall;
export const POST = noSuchCall;
