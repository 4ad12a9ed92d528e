/** Called once when a server process begins, before it answers. Background work begins with it. */
export async function register(): Promise<void> {
  const { startWithServer } = await import("@/lib/work/start");
  startWithServer();
}
