type Trespass = {
  readonly rule: string;
  /** The file that goes where it may not. */
  readonly from: string;
  readonly files: Readonly<Record<string, string>>;
};

/** One file that breaks a rule, by importing `target`, which is made too if it is a file of ours. */
function trespass(rule: string, from: string, target: string): Trespass {
  const isOurs = /^(lib|app|prisma|tests)\//.test(target);
  const up = "../".repeat(from.split("/").length - 1);
  const specifier = isOurs ? `${up}${target}` : target;
  const files: Record<string, string> = {
    [from]: `import { thing } from "${specifier}";\nexport const here = thing;\n`,
  };
  if (isOurs) files[`${target}.ts`] = "export const thing = 1;\n";
  return { rule, from, files };
}

/** For each rule, at least one file that breaks it and that the tool must report. */
export const trespasses: readonly Trespass[] = [
  trespass("metrology-imports-itself-only", "lib/metrology/a.ts", "lib/domain/target"),
  trespass("metrology-imports-itself-only", "lib/metrology/b.ts", "zod"),
  trespass("metrology-imports-itself-only", "lib/metrology/c.ts", "node:crypto"),
  trespass("domain-decides-and-knows-no-database", "lib/domain/a.ts", "lib/data/target"),
  trespass("domain-decides-and-knows-no-database", "lib/domain/b.ts", "node:crypto"),
  trespass("data-stores-and-decides-nothing", "lib/data/a.ts", "lib/operations/target"),
  trespass("data-stores-and-decides-nothing", "lib/data/b.ts", "next"),
  trespass("files-turn-bytes-into-rows", "lib/files/a.ts", "lib/data/target"),
  trespass("drawing-knows-shapes-only", "lib/drawing/a.ts", "lib/views/target"),
  trespass("documents-render-and-never-query", "lib/documents/a.ts", "lib/data/target"),
  trespass("authenticity-runs-anywhere", "lib/documents/authenticity/a.ts", "lib/documents/seal/target"),
  trespass("authenticity-runs-anywhere", "lib/documents/authenticity/b.ts", "node:crypto"),
  trespass("operations-are-where-something-happens", "lib/operations/a.ts", "lib/views/target"),
  trespass("operations-are-where-something-happens", "lib/operations/b.ts", "next"),
  trespass("views-only-read", "lib/views/a.ts", "lib/operations/target"),
  trespass("web-is-glue", "lib/web/a.ts", "lib/data/target"),
  trespass("jobs-call-operations", "lib/jobs/a.ts", "lib/web/target"),
  trespass("jobs-call-operations", "lib/jobs/b.ts", "lib/data/target"),
  trespass("jobs-call-operations", "lib/jobs/c.ts", "pg"),
  trespass("station-talks-http", "lib/station/a.ts", "lib/data/target"),
  trespass("commands-know-no-pages", "lib/commands/a.ts", "app/target"),
  trespass("commands-know-no-pages", "lib/commands/b.ts", "lib/web/target"),
  trespass("seed-tells-its-story-by-operations", "prisma/a.ts", "app/target"),
  trespass("pages-compose-views", "app/a.tsx", "lib/data/target"),
  trespass("pages-compose-views", "app/b.tsx", "lib/documents/target"),
  trespass("pages-compose-views", "app/c.tsx", "pg"),
  trespass("browser-code-is-pure", "app/a.client.tsx", "lib/views/target"),
  trespass("browser-code-is-pure", "app/b.client.tsx", "node:crypto"),
  trespass("generated-client-only-in-data", "lib/views/b.ts", "lib/generated/target"),
  trespass("pages-act-through-actions-and-routes-only", "app/orders/page.tsx", "lib/operations/order/target"),
  trespass("web-runs-no-operation-by-name", "lib/web/b.ts", "lib/operations/order/target"),
  trespass("web-reads-the-actor-only", "lib/web/c.ts", "lib/views/target"),
  trespass("operations-stay-with-their-noun", "lib/operations/order/accept.ts", "lib/operations/run/target"),
  trespass("canonical-bytes-only-where-hashed", "lib/domain/order/rules.ts", "canonicalize"),
  trespass("production-needs-no-development-package", "lib/commands/c.ts", "vitest"),
  trespass("nothing-unresolved", "lib/views/c.ts", "./nowhere"),
  {
    rule: "no-cycles",
    from: "lib/domain/one.ts",
    files: {
      "lib/domain/one.ts": 'import { two } from "./two";\nexport const one = () => two;\n',
      "lib/domain/two.ts": 'import { one } from "./one";\nexport const two = () => one;\n',
    },
  },
  // A type binds as firmly as a function.
  {
    rule: "metrology-imports-itself-only",
    from: "lib/metrology/d.ts",
    files: {
      "lib/metrology/d.ts": 'import type { thing } from "../domain/target";\nexport type D = typeof thing;\n',
    },
  },
  // Going round by a route through an alias or a dynamic import does not help either.
  {
    rule: "views-only-read",
    from: "lib/views/d.ts",
    files: { "lib/views/d.ts": 'export const d = () => import("../operations/target");\n' },
  },
];
