import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";

export type Source = { readonly file: string; readonly text: string };

export const checkout = path.resolve(import.meta.dirname, "..", "..");

/** Every file of the repository, as git sees it: tracked, or new and not ignored. */
export function repositoryFiles(): readonly string[] {
  const list = (...args: string[]) =>
    execFileSync("git", ["ls-files", "-z", ...args], { cwd: checkout, encoding: "utf8" })
      .split("\0")
      .filter(Boolean);
  const gone = new Set(list("--deleted"));
  return [...new Set([...list(), ...list("--others", "--exclude-standard")])]
    .filter((file) => !gone.has(file))
    .sort();
}

export function readSources(files: readonly string[]): readonly Source[] {
  return files.map((file) => ({ file, text: readFileSync(path.join(checkout, file), "utf8") }));
}

export const isScript = (file: string): boolean => /\.(ts|tsx|mts|cts|mjs|cjs)$/.test(file);

/** Every node of the file's syntax tree, so that comments and strings are not taken for code. */
export function nodesOf({ file, text }: Source): readonly ts.Node[] {
  const kind = file.endsWith("x") ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const found: ts.Node[] = [];
  const visit = (node: ts.Node): void => {
    found.push(node);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true, kind));
  return found;
}

/** `file:line: what`, as editors understand it. */
export function at(source: Source, node: ts.Node, what: string): string {
  const file = node.getSourceFile();
  return `${source.file}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}: ${what}`;
}
