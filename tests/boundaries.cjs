/**
 * Who may import whom (DEVELOPERS.md has the map). Each room of lib/ and app/ names all it may see; whatever is not
 * named is an error. tests/architecture shows that each rule bites.
 */
const npm = (...names) => names.map((name) => `^node_modules/${name}/`);
const node = (...names) => names.map((name) => `^(node:)?${name}$`);
const lib = (...rooms) => rooms.map((room) => `^lib/${room}/`);

/** Programs, unlike rooms, may use all of Node. */
function withNode(rule) {
  return { ...rule, to: { ...rule.to, dependencyTypesNot: ["core"] } };
}

/** Everything a room may import, itself included; nothing else. */
function room(name, from, comment, allowed) {
  return { name, comment, severity: "error", from, to: { pathNot: allowed.flat() } };
}

const client = String.raw`\.client\.tsx?$`;

const rooms = [
  room(
    "metrology-imports-itself-only",
    { path: "^lib/metrology/" },
    "It computes, also in a browser, the same bits everywhere: no package, no node:, no laboratory.",
    [lib("metrology")],
  ),
  room(
    "domain-decides-and-knows-no-database",
    { path: "^lib/domain/" },
    "Rules take time, ids and randomness as arguments; zod describes shapes, canonicalize gives the bytes to hash.",
    [lib("domain", "metrology"), npm("zod", "canonicalize")],
  ),
  room("data-stores-and-decides-nothing", { path: "^lib/data/" }, "The only room that knows Prisma or SQL.", [
    lib("data", "domain", "metrology", "generated"),
    npm("@prisma", "pg", "@types/pg"),
    node("crypto"),
  ]),
  room(
    "files-turn-bytes-into-rows",
    { path: "^lib/files/" },
    "Bytes in, typed rows or a refusal out; it stores nothing.",
    [
      lib("files", "domain", "metrology"),
      npm("csv-parse", "fflate", "zod", "libxml2-wasm"),
      node("stream", "zlib", "string_decoder", "buffer", "crypto"),
      // The published schemas lie in a folder that is not part of the repository; nothing else is read from disk.
      node("fs", "path"),
    ],
  ),
  room(
    "drawing-knows-shapes-only",
    { path: "^lib/drawing/" },
    "The same picture on the page and in the PDF: view data in, shapes and labels out.",
    [
      lib("drawing", "domain", "metrology"),
      npm("d3-scale", "d3-shape", "@types/d3-scale", "@types/d3-shape", "qrcode", "@types/qrcode"),
    ],
  ),
  room(
    "documents-render-and-never-query",
    { path: "^lib/documents/" },
    "Content in, bytes out: the same content must give the same bytes in ten years, whatever the database holds.",
    [
      lib("documents", "drawing", "domain", "metrology"),
      npm(
        "react",
        "@types/react",
        "@react-pdf",
        "pdf-lib",
        "pkijs",
        "asn1js",
        "qrcode",
        "@types/qrcode",
        "zod",
        "@expo-google-fonts",
        "fflate",
      ),
      node("fs", "fs/promises", "path", "url", "module", "crypto", "stream", "buffer"),
      // What is written as a DCC is held against the rules that others' are read by; there is one set of them.
      ["^lib/files/dcc/"],
    ],
  ),
  room(
    "authenticity-runs-anywhere",
    { path: "^lib/documents/authenticity/" },
    "Whoever holds a document checks it in their own browser, with nothing of ours behind it.",
    [lib("documents/authenticity", "domain", "metrology"), npm("pkijs", "asn1js", "pdf-lib", "zod")],
  ),
  room(
    "operations-are-where-something-happens",
    { path: "^lib/operations/" },
    "Authorise, lock, let the domain decide, write, append to the audit log; no framework.",
    [
      lib("operations", "data", "documents", "files", "domain", "metrology"),
      npm("zod", "@node-rs/argon2", "otpauth"),
      // `http` for the type of a request as it arrives, before Next has made one of its own.
      node("crypto", "stream", "buffer", "http", "diagnostics_channel"),
    ],
  ),
  room(
    "views-only-read",
    { path: "^lib/views/" },
    "A view answers one question for one actor, and may read a kept file anew; what changes something is an operation.",
    [lib("views", "data", "files", "domain", "metrology")],
  ),
  room(
    "web-is-glue",
    { path: "^lib/web/" },
    "Sign-in, session, forms and environment; what the laboratory does is behind operations and views.",
    [
      lib("web", "domain", "operations", "views"),
      ["^lib/data/client", "^lib/data/public-url", "^lib/data/seal"],
      npm("next", "next-auth", "react", "@types/react", "server-only", "zod"),
      // `http` for the type of a request as it arrives, before Next has made one of its own.
      node("crypto", "stream", "buffer", "http", "diagnostics_channel"),
    ],
  ),
  room(
    "jobs-call-operations",
    { path: "^lib/jobs/" },
    "Background work is done by the same operations as work in the foreground; it asks no database itself.",
    [
      lib("jobs", "operations", "views", "documents"),
      npm("graphile-worker", "nodemailer", "@types/nodemailer"),
      // Mail as files, where no mail server is set; webhooks.
      node("fs/promises", "path", "dns", "http", "https", "net"),
    ],
  ),
  room(
    "station-talks-http",
    { path: "^lib/station/" },
    "The program beside the furnace knows the platform's address and nothing of its inside.",
    [
      lib("station", "domain", "metrology"),
      npm("serialport", "zod"),
      node("net", "http", "https", "fs", "fs/promises", "path", "crypto", "timers/promises"),
    ],
  ),
  withNode(
    room("commands-know-no-pages", { path: "^lib/commands/" }, "Commands may use everything below the web.", [
      lib(
        "commands",
        "metrology",
        "domain",
        "data",
        "files",
        "drawing",
        "documents",
        "operations",
        "views",
        "jobs",
        "station",
      ),
      ["^prisma/", "^tests/support/", "^node_modules/"],
    ]),
  ),
  withNode(
    room(
      "seed-tells-its-story-by-operations",
      { path: "^prisma/" },
      "The demo is made by what people use, never by writing rows.",
      [
        ["^prisma/"],
        lib(
          "commands",
          "metrology",
          "domain",
          "data",
          "files",
          "documents",
          "operations",
          "views",
          "station",
        ),
        npm("pg", "@types/pg", "prisma", "zod"),
      ],
    ),
  ),
  room(
    "pages-compose-views",
    { path: "^(app/|proxy\\.ts|instrumentation\\.ts)", pathNot: client },
    "A page loads views and composes parts; it knows neither the database nor how a document is made.",
    [
      ["^app/"],
      lib("views", "web", "drawing", "domain"),
      ["^lib/metrology/reporting/", "^lib/operations/"],
      npm(
        "next",
        "next-auth",
        "react",
        "react-dom",
        "@types/react",
        "@types/react-dom",
        "server-only",
        "zod",
      ),
    ],
  ),
  room(
    "browser-code-is-pure",
    { path: `^app/.*${client}` },
    "What runs in the browser may compute and draw; what needs a server is reached through an action.",
    [
      ["^app/"],
      lib("drawing", "domain", "metrology", "documents/authenticity"),
      ["^lib/web/form-"],
      npm("next", "react", "react-dom", "@types/react", "@types/react-dom", "zod", "jsqr"),
    ],
  ),
];

const crossing = [
  {
    name: "generated-client-only-in-data",
    comment: "Prisma's types must not spread: they would make the database's shape everybody's.",
    severity: "error",
    from: { pathNot: "^lib/(data|generated)/" },
    to: { path: "^lib/generated/" },
  },
  {
    name: "pages-act-through-actions-and-routes-only",
    comment: "Something happens only when a person submits or a program posts: never while a page is drawn.",
    severity: "error",
    from: { path: "^app/", pathNot: "/(actions|route)\\.ts$" },
    to: { path: "^lib/operations/", dependencyTypesNot: ["type-only"] },
  },
  {
    name: "web-runs-no-operation-by-name",
    comment:
      "The form glue executes what an action hands it; only sign-in, linking and a program's admission are its own business.",
    severity: "error",
    from: { path: "^lib/web/" },
    to: {
      path: "^lib/operations/[^/]+/",
      pathNot: "^lib/operations/(staff/sign-in|machine/admit-program|account/outside-link)",
      dependencyTypesNot: ["type-only"],
    },
  },
  {
    name: "web-reads-the-actor-only",
    comment: "Every other question is asked by the page that shows the answer.",
    severity: "error",
    from: { path: "^lib/web/" },
    to: { path: "^lib/views/", pathNot: "^lib/views/(actor|view)", dependencyTypesNot: ["type-only"] },
  },
  {
    name: "operations-stay-with-their-noun",
    comment:
      "A verb that calls another noun's verb would write two stories in one transaction. The proof of who signs comes before, in one of its own.",
    severity: "error",
    from: { path: "^lib/operations/([^/]+)/" },
    to: { path: "^lib/operations/[^/]+/", pathNot: "^lib/operations/($1/|signing/prove-act)" },
  },
  {
    name: "canonical-bytes-only-where-hashed",
    comment: "Two ways to bytes would be two hashes for one content.",
    severity: "error",
    from: { path: "^lib/", pathNot: "^lib/domain/(audit|certificate|evidence)/" },
    to: { path: "^node_modules/canonicalize/" },
  },
  {
    name: "production-needs-no-development-package",
    comment: "Packages for development are not there in production.",
    severity: "error",
    from: { path: "^(app|lib|prisma)/", pathNot: "^lib/commands/(test/|bench/|write-migration)" },
    to: { dependencyTypes: ["npm-dev"], dependencyTypesNot: ["type-only"] },
  },
  {
    name: "no-cycles",
    comment: "Two files that need each other are one file, or a third is missing.",
    severity: "error",
    from: {},
    to: { circular: true },
  },
  {
    name: "nothing-unresolved",
    comment: "An import that leads nowhere escapes every other rule.",
    severity: "error",
    from: {},
    to: { couldNotResolve: true },
  },
];

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [...rooms, ...crossing],
  options: {
    tsConfig: { fileName: "tsconfig.json" },
    // Types count too: a type that leaks binds as firmly as a function.
    tsPreCompilationDeps: true,
    doNotFollow: { path: "^(node_modules|lib/generated)/" },
    exclude: { path: "^(\\.next|\\.emfolio)/" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "default", "types"],
    },
  },
};
