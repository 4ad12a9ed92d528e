import type { MetadataRoute } from "next";

/** What a phone needs to keep the field screens on its home screen. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: "/today",
    name: "Dewledger in the field",
    short_name: "Dewledger",
    description: "Today’s jobs and their startup records, with and without a signal.",
    start_url: "/today",
    scope: "/",
    display: "standalone",
    orientation: "portrait",
    background_color: "#faf7f0",
    theme_color: "#faf7f0",
    icons: [
      { src: "/icons/icon-192.png", sizes: "192x192", type: "image/png" },
      { src: "/icons/icon-512.png", sizes: "512x512", type: "image/png" },
      { src: "/icons/maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
    ],
  };
}
