import ts from "typescript";
import { at, nodesOf, type Source } from "./source";

/** A document, its clause, equation, table or page, an author with a year, a law by name, or that there is no source. */
const citation =
  /\b(JCGM|GUM|IEC|ISO|ASTM|NIST|ITS-90|ILAC|EA-4|ECMA|EURAMET|SRD|TAOCP|Abramowitz|A&S|fdlibm|eq\.|equations?|clause|annex)\b|\b(1[789]|20)\d\d\b|\b(method|rule|scheme|criterion|inequality|definition|arithmetic|notation)\b|from memory|no source|our own|this project's|[Ss]ource\b/;

/** Units by sign or word, or that there are none. */
const unit =
  /µV|mV|°C|°F|Ω|\bK\b|kelvin|radian|second|minute|year|hour|metre|\b[Uu]nits?\b|[Pp]ure number|[Nn]o unit|dimension|percent|[Pp]robabilit|\btext\b|places?\b|counts?\b|whole number/;

/** What is refused, or that nothing is. */
const refusal =
  /[Pp]roblems?\b|[Rr]efuse[ds]?\b|[Rr]efusals?\b|`(not-finite|outside-range|too-few|not-applicable|no-solution)`|"(not-finite|outside-range|too-few|not-applicable|no-solution)"/;

const errorCase =
  /NaN|[Nn]o error cases?|not a number|not finite|[Rr]ange\b|[Cc]aller|never|[Ii]nfinit|\bempty\b|checks?\b|null\b|no values|throws/;

const SHORTEST = 60;

export type Exported = {
  readonly name: string;
  readonly node: ts.Node;
  readonly text: string;
  readonly type: string;
};

/** Each exported function with the text of its docstring and its result's type as written. */
export function exportedFunctions(source: Source): readonly Exported[] {
  return nodesOf(source).flatMap((node): readonly Exported[] => {
    if (ts.isFunctionDeclaration(node) && isExported(node)) {
      return [
        { name: node.name?.text ?? "default", node, text: docstring(node), type: node.type?.getText() ?? "" },
      ];
    }
    if (!ts.isVariableStatement(node) || !isExported(node)) return [];
    return node.declarationList.declarations.flatMap((it) => {
      const made = it.initializer;
      if (made === undefined || !(ts.isArrowFunction(made) || ts.isFunctionExpression(made))) return [];
      return [{ name: it.name.getText(), node: it, text: docstring(node), type: made.type?.getText() ?? "" }];
    });
  });
}

function isExported(node: ts.HasModifiers): boolean {
  return node.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false;
}

function docstring(node: ts.Node): string {
  const comment = ts.getJSDocCommentsAndTags(node).at(-1);
  return comment === undefined
    ? ""
    : comment
        .getText()
        .replaceAll(/^\s*\/?\*+\/?|\*\/$/gm, " ")
        .replaceAll(/\s+/g, " ")
        .trim();
}

/** What a reader of this function would have to ask: source, units, error cases. */
export function undocumented(source: Source): readonly string[] {
  return exportedFunctions(source).flatMap(({ name, node, text, type }) => {
    const missing = [
      ...(text.length < SHORTEST ? ["a docstring worth the name"] : []),
      ...(citation.test(text) ? [] : ["its source"]),
      ...(unit.test(text) ? [] : ["its units"]),
      ...((type.includes("Outcome<") ? refusal : errorCase).test(text) || refusal.test(text)
        ? []
        : ["its error cases"]),
    ];
    return missing.length === 0 ? [] : [at(source, node, `${name} does not say ${missing.join(", ")}`)];
  });
}
