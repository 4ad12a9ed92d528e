"use server";

import { revalidatePath } from "next/cache";
import { makePacketSchema, packetIdSchema, revokeShareSchema, sendPacketSchema } from "@/lib/schemas/packets";
import { action } from "@/lib/server/action";
import { checkPacket } from "@/lib/services/check-packet";
import { revokeShare, sendPacket } from "@/lib/services/packet-sending";
import * as packets from "@/lib/services/packets";

export const makePacket = action({
  name: "make packet",
  permission: "packet.make",
  schema: makePacketSchema,
  run: async (scope, input) => {
    const id = await packets.makePacket(scope, input);
    revalidatePath(`/jobs/${input.jobId}/packet`);
    return id as string;
  },
});

export const check = action({
  name: "check packet",
  permission: "packet.make",
  schema: packetIdSchema,
  run: checkPacket,
});

export const send = action({
  name: "send packet",
  permission: "packet.make",
  schema: sendPacketSchema,
  run: async (scope, input) => {
    await sendPacket(scope, input);
    revalidatePath(`/jobs/${input.jobId}/packet`);
  },
});

export const withdraw = action({
  name: "withdraw packet link",
  permission: "packet.make",
  schema: revokeShareSchema,
  run: async (scope, input) => {
    await revokeShare(scope, input);
    revalidatePath(`/jobs/${input.jobId}/packet`);
  },
});
