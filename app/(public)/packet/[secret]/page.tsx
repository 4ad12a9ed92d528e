import type { Metadata } from "next";
import { headers } from "next/headers";
import { SharedPacket } from "@/components/packets/shared-packet";
import { clientAddress } from "@/lib/auth/client-address";
import { load } from "@/lib/server/page";
import { openPacketLink } from "@/lib/services/packet-links";

export const metadata: Metadata = {
  title: "Packet",
  referrer: "no-referrer",
  robots: { index: false, follow: false },
};

/** What a private link shows to somebody who is not signed in. */
export default async function SharedPacketPage({
  params,
}: {
  readonly params: Promise<{ readonly secret: string }>;
}) {
  const { secret } = await params;
  const packet = await load(openPacketLink(secret, clientAddress((await headers()).get("x-forwarded-for"))));
  return <SharedPacket packet={packet} href={`/api/shared-packets/${secret}`} />;
}
