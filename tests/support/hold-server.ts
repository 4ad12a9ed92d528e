/** Starts the server of a folder and holds it until a signal comes or the input closes. */
import { startEmbedded } from "@/prisma/embedded";

const server = await startEmbedded({ folder: process.argv[2] ?? "" });
process.stdout.write(`${server.postmasterPid}\n`);
process.stdin.on("end", () => process.exit(0)).resume();
