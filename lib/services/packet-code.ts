import { create } from "qrcode";
import { printedLinkToken } from "@/lib/auth/link-token";
import { env } from "@/lib/env";

/** The private page of a packet, as it is printed in it. */
export type PrintedLink = {
  readonly href: string;
  readonly tokenHash: string;
  readonly expiresAt: Date;
};

/** A packet lies in a drawer: its code opens for two years. */
const CODE_DAYS = 730;

/** The link printed in one revision of a homeowner's packet. The same revision gives the same link. */
export function printedLink(tenantId: string, jobId: string, revision: number, now: Date): PrintedLink {
  const { token, tokenHash } = printedLinkToken(tenantId, `${jobId} homeowner ${revision}`);
  const day = Date.parse(`${now.toISOString().slice(0, 10)}T00:00:00Z`);
  return {
    href: privateAddress(token),
    tokenHash,
    expiresAt: new Date(day + CODE_DAYS * 86_400_000),
  };
}

export function privateAddress(token: string): string {
  return `${env().NEXTAUTH_URL}/packet/${token}`;
}

/** The dark squares of a QR code (ISO/IEC 18004) as path data, one unit a square, without the quiet zone. */
export function qrPath(text: string): { readonly size: number; readonly d: string } {
  const { modules } = create(text, { errorCorrectionLevel: "M" });
  const parts: string[] = [];
  for (let row = 0; row < modules.size; row += 1) {
    for (let column = 0; column < modules.size; column += 1) {
      if (modules.get(row, column)) parts.push(`M${column} ${row}h1v1h-1z`);
    }
  }
  return { size: modules.size, d: parts.join("") };
}
