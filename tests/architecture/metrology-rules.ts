import ts from "typescript";
import { at, nodesOf, type Source } from "./source";

// Only these give the same bits in every engine; the others are lib/metrology/number's own.
const sameEverywhere = new Set(["sqrt", "abs", "floor", "ceil", "min", "max", "sign", "trunc"]);

/** Constants are not functions, but their last digits are the engine's too; number/ has its own. */
const world = new Set(
  [
    "Date",
    "Intl",
    "console",
    "performance",
    "process",
    "crypto",
    "fetch",
    "globalThis",
    "window",
    "document",
    "eval",
  ].concat(["setTimeout", "setInterval", "queueMicrotask", "navigator", "require", "Function"]),
);

/** What would make a result differ between engines, places or days. */
export function impurities(source: Source): readonly string[] {
  return nodesOf(source).flatMap((node) => {
    if (
      ts.isPropertyAccessExpression(node) &&
      node.expression.getText() === "Math" &&
      !sameEverywhere.has(node.name.text)
    ) {
      return [at(source, node, `Math.${node.name.text}`)];
    }
    if (ts.isElementAccessExpression(node) && node.expression.getText() === "Math")
      return [at(source, node, "Math[…]")];
    if (ts.isVariableDeclaration(node) && node.initializer?.getText() === "Math")
      return [at(source, node, "Math renamed")];
    if (
      node.kind === ts.SyntaxKind.AsteriskAsteriskToken ||
      node.kind === ts.SyntaxKind.AsteriskAsteriskEqualsToken
    ) {
      return [at(source, node, "**")];
    }
    if (ts.isIdentifier(node) && world.has(node.text) && !isName(node)) return [at(source, node, node.text)];
    if (ts.isPropertyAccessExpression(node) && /^toLocale|^localeCompare$/.test(node.name.text)) {
      return [at(source, node, node.name.text)];
    }
    return [];
  });
}

/** A property or a field that happens to be called so. */
function isName(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.name === node;
  if (ts.isQualifiedName(parent)) return parent.right === node;
  return (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) && parent.name === node;
}
