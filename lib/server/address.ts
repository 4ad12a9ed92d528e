/** Where a request comes from, as the proxy before the application says it. */
export function addressOf(headers: { get: (name: string) => string | null }): string {
  return headers.get("x-forwarded-for")?.split(",")[0]?.trim() || "direct";
}
