import type { Metadata } from "next";
import { ApiReference } from "@/components/api/api-reference";
import { env } from "@/lib/env";

export const metadata: Metadata = { title: "API" };
// The address stands in its examples, which only a running server knows.
export const dynamic = "force-dynamic";

/** For whoever writes the program: without a sign-in, and without anybody's data. */
export default function ApiReferencePage() {
  return <ApiReference server={env().NEXTAUTH_URL} />;
}
