import { fileURLToPath } from "node:url";
import { defineConfig } from "prisma/config";

// Set before the command line looks for it, so that nothing is fetched from the network.
process.env.PRISMA_SCHEMA_ENGINE_BINARY = fileURLToPath(
  new URL("./prisma/schema-engine-stub", import.meta.url),
);

export default defineConfig({
  schema: "prisma/schema.prisma",
  migrations: { path: "prisma/migrations" },
});
