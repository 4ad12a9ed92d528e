import { expect, test, vi } from "vitest";
import { clientAddress, UNKNOWN_ADDRESS } from "@/lib/auth/client-address";

const settings = vi.hoisted(() => ({ TRUSTED_PROXIES: 0 }));
vi.mock("@/lib/env", () => ({ env: () => settings }));

test.each([
  [0, "203.0.113.7", UNKNOWN_ADDRESS],
  [1, "203.0.113.7", "203.0.113.7"],
  // What the sender wrote stands first and is not believed.
  [1, "invented, 203.0.113.7", "203.0.113.7"],
  [2, "invented, 203.0.113.7, 10.0.0.1", "203.0.113.7"],
  [2, "10.0.0.1", UNKNOWN_ADDRESS],
  [1, null, UNKNOWN_ADDRESS],
  [1, "", UNKNOWN_ADDRESS],
])("with %i proxies of our own, “%s” comes from %s", (proxies, header, address) => {
  settings.TRUSTED_PROXIES = proxies;
  expect(clientAddress(header)).toBe(address);
});
