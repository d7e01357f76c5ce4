import path from "node:path";
import ts from "typescript";
import { at, nodesOf, type Source } from "./source";

/** A page is about 60 lines and never above 110: lib/decisions/0012-how-long-a-page-may-be.md. */
export const longest = { file: 300, page: 110 };

const mayReadEnvironment =
  /^(lib\/web\/env\.ts|lib\/commands\/.*|prisma\/.*|tests\/.*|e2e\/.*|instrumentation\.ts|[^/]+\.config\.mjs)$/;

const maySpeakSql = /^(lib\/data\/sql\/.*|lib\/commands\/.*|prisma\/migrate\.ts|tests\/.*|e2e\/.*)$/;

const homeless = new Set(["utils", "util", "common", "helpers", "types", "misc", "shared"]);

/** Next decides these names, and wants them to be client components. */
const clientByName = /^app\/(.*\/)?(global-)?error\.tsx$/;

export function tooLong({ file, text }: Source): readonly string[] {
  const lines = text.trimEnd().split("\n").length;
  const limit = file.endsWith("/page.tsx") ? longest.page : longest.file;
  return lines > limit ? [`${file}: ${lines} lines, at most ${limit}`] : [];
}

/** A file that only passes on what others export hides where things live. */
export function barrels(source: Source): readonly string[] {
  if (/(^|\/)index\.[cm]?tsx?$/.test(source.file)) return [`${source.file}: an index file`];
  const [root] = nodesOf(source);
  const statements = root !== undefined && ts.isSourceFile(root) ? root.statements : [];
  const passesOn = statements.filter((it) => ts.isExportDeclaration(it) && it.moduleSpecifier !== undefined);
  const star = passesOn.find((it) => ts.isExportDeclaration(it) && it.exportClause === undefined);
  if (star !== undefined) return [at(source, star, "export *")];
  return passesOn.length > 0 && passesOn.length === statements.length
    ? [`${source.file}: only passes on`]
    : [];
}

export function homelessFolders({ file }: Source): readonly string[] {
  const folder = path
    .dirname(file)
    .split("/")
    .find((part) => homeless.has(part));
  return folder === undefined ? [] : [`${file}: a folder ${folder}/; a noun is missing`];
}

export function environmentReads(source: Source): readonly string[] {
  if (mayReadEnvironment.test(source.file)) return [];
  return nodesOf(source)
    .filter((node) => ts.isPropertyAccessExpression(node) && node.getText() === "process.env")
    .map((node) => at(source, node, "process.env"));
}

export function rawSql(source: Source): readonly string[] {
  if (maySpeakSql.test(source.file)) return [];
  return nodesOf(source).flatMap((node) => {
    if (ts.isImportDeclaration(node) && /^["']pg["']$/.test(node.moduleSpecifier.getText()))
      return [at(source, node, "pg")];
    if (ts.isPropertyAccessExpression(node) && /^\$(query|execute)Raw/.test(node.name.text)) {
      return [at(source, node, node.name.text)];
    }
    return ts.isPropertyAccessExpression(node) && node.getText() === "Prisma.sql"
      ? [at(source, node, "Prisma.sql")]
      : [];
  });
}

/** The boundary tool knows browser code by its file's name, so the name must tell the truth. */
export function misnamedClients({ file, text }: Source): readonly string[] {
  const isClient = /^\s*(["'])use client\1/.test(text.replace(/^(\s*(\/\*[\s\S]*?\*\/|\/\/[^\n]*\n))*/, ""));
  const isNamed = /\.client\.tsx?$/.test(file) || clientByName.test(file);
  if (isClient === isNamed) return [];
  return [isClient ? `${file}: "use client" in a file not called *.client.tsx` : `${file}: no "use client"`];
}

export function oddNames({ file }: Source): readonly string[] {
  const name = path.basename(file).replace(/\.(test|spec|client|config|d|e2e)?\.?[a-z]+$/, "");
  return /^[a-z0-9]+(-[a-z0-9]+)*$/.test(name) || name === "" ? [] : [`${file}: not in kebab-case`];
}

/** A test that is left out, or leaves out the others. `skipIf` stays: it must say aloud what is missing. */
export function silencedTests(source: Source): readonly string[] {
  if (!/^(tests|e2e)\//.test(source.file)) return [];
  return nodesOf(source)
    .filter(
      (node) =>
        ts.isPropertyAccessExpression(node) &&
        /^(it|test|describe|suite)(\.|$)/.test(node.expression.getText()) &&
        /^(skip|only|todo|fails|fixme)$/.test(node.name.text),
    )
    .map((node) => at(source, node, node.getText()));
}

export function enums(source: Source): readonly string[] {
  return nodesOf(source)
    .filter((node) => ts.isEnumDeclaration(node))
    .map((node) => at(source, node, "an enum of our own"));
}
