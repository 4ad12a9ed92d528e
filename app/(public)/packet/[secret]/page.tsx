import type { Metadata } from "next";
import { headers } from "next/headers";
import { SharedPacket } from "@/components/packets/shared-packet";
import { addressOf } from "@/lib/server/address";
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
  const packet = await load(openPacketLink(secret, addressOf(await headers())));
  return <SharedPacket packet={packet} href={`/api/shared-packets/${secret}`} />;
}
