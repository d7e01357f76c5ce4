/** A text in a PDF's string: its three special signs escaped, and nothing beyond what the font of the file has. */
const escaped = (line: string): string =>
  line.replaceAll(/[^\x20-\x7e]/g, "?").replaceAll(/[\\()]/g, (sign) => `\\${sign}`);

/** One page of plain lines as a PDF: what an issuer of the demonstration would have sent. It says that it is invented. */
export const inventedCertificate = (lines: readonly string[]): Uint8Array => {
  const text = lines.map((line) => `(${escaped(line)}) Tj T*`).join("\n");
  const stream = `BT /F1 11 Tf 16 TL 60 780 Td\n${text}\nET`;
  const objects = [
    "<< /Type /Catalog /Pages 2 0 R >>",
    "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
    "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R /Resources << /Font << /F1 5 0 R >> >> >>",
    `<< /Length ${stream.length} >>\nstream\n${stream}\nendstream`,
    "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>",
  ];
  let body = "%PDF-1.4\n";
  const offsets = objects.map((object, index) => {
    const at = body.length;
    body += `${index + 1} 0 obj\n${object}\nendobj\n`;
    return at;
  });
  const table = offsets.map((at) => `${String(at).padStart(10, "0")} 00000 n \n`).join("");
  const end = `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${body.length}\n%%EOF\n`;
  return new TextEncoder().encode(
    `${body}xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${table}${end}`,
  );
};
