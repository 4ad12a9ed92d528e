/** Called once when a server process begins, before it answers. Background work begins with it. */
export async function register(): Promise<void> {
  // Read here and not in lib/env.ts: the build replaces it, and so leaves the edge bundle empty.
  if (process.env.NEXT_RUNTIME === "nodejs") {
    const { startWithServer } = await import("./lib/work/start");
    startWithServer();
  }
}
