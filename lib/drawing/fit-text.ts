/** Mean advance of Source Sans 3 as a share of its size, measured over running English text; its figures are 0.497. */
const meanAdvance = 0.49;

export const textWidth = (text: string, size: number): number => text.length * size * meanAdvance;

/** The text, or its beginning and an ellipsis when it would be wider than `width`. The table twin has it whole. */
export function fitText(text: string, width: number, size: number): string {
  if (textWidth(text, size) <= width) return text;
  const letters = Math.max(1, Math.floor(width / (size * meanAdvance)) - 1);
  return `${text.slice(0, letters).trimEnd()}…`;
}

/** The text broken at spaces into at most `lines` lines of `width`; what is left over ends in an ellipsis. */
export function wrapText(text: string, width: number, size: number, lines: number): readonly string[] {
  const out: string[] = [];
  let line = "";
  const words = text.split(" ");
  for (const [index, word] of words.entries()) {
    const longer = line ? `${line} ${word}` : word;
    if (line && textWidth(longer, size) > width) {
      if (out.length === lines - 1)
        return [...out, fitText([line, ...words.slice(index)].join(" "), width, size)];
      out.push(line);
      line = word;
    } else line = longer;
  }
  return [...out, fitText(line, width, size)];
}
