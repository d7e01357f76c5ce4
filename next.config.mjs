/** @type {import("next").NextConfig} */
export default {
  reactStrictMode: true,
  agentRules: false,
  poweredByHeader: false,
  // No image optimiser: the product ships no raster images that need it, and it has been an attack surface.
  images: { unoptimized: true },
  typescript: { ignoreBuildErrors: true }, // types are checked by `npm test`, in one place
  serverExternalPackages: [
    "@node-rs/argon2",
    "pg",
    "@react-pdf/renderer",
    "@prisma/client",
    "@prisma/adapter-pg",
    // One instance of its memory for all routes, instead of a copy in each bundle.
    "libxml2-wasm",
  ],
  experimental: {
    serverActions: { bodySizeLimit: "10mb" },
    // `forbidden()`: a page a person's roles do not allow answers 403 with app/forbidden.tsx.
    authInterrupts: true,
  },
  // The same for every address, api/ included; proxy.ts adds the content policy of pages, and HSTS on https.
  headers: async () => [
    {
      source: "/:path*",
      headers: [
        { key: "X-Content-Type-Options", value: "nosniff" },
        { key: "X-Frame-Options", value: "DENY" },
        // Not "no-referrer": that turns the Origin of a form into "null", which our own check refuses.
        { key: "Referrer-Policy", value: "same-origin" },
        { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
        { key: "Permissions-Policy", value: "camera=(), microphone=(), geolocation=()" },
      ],
    },
    // The one page that looks for a label with the camera; the later entry takes the place of the one above.
    {
      source: "/sensors/find",
      headers: [{ key: "Permissions-Policy", value: "camera=(self), microphone=(), geolocation=()" }],
    },
    // Its address is the key to what it says: told to nobody, and listed nowhere. No form is sent from here.
    {
      source: "/authenticity/:path*",
      headers: [
        { key: "Referrer-Policy", value: "no-referrer" },
        { key: "X-Robots-Tag", value: "noindex, nofollow" },
      ],
    },
  ],
  // Folders that begin with a dot are passed over by most tools; the address is the one that is agreed upon for such lists.
  rewrites: async () => [{ source: "/.well-known/seal-keys.json", destination: "/api/seal-keys" }],
};
