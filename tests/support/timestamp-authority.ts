import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import path from "node:path";

export type TimestampAuthority = {
  readonly url: string;
  /** DER. */
  readonly certificate: Uint8Array;
  readonly close: () => Promise<void>;
};

const settings = `[tsa]
default_tsa = it
[it]
dir = .
serial = ./serial
signer_cert = ./tsa.pem
signer_key = ./tsa.key
certs = ./tsa.pem
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256, sha512
`;

/** An RFC 3161 authority of openssl's behind HTTP, with a key of its own: an outside one, as far as we are concerned. */
export const startTimestampAuthority = async (folder: string): Promise<TimestampAuthority> => {
  const call = (...args: string[]) => execFileSync("openssl", args, { cwd: folder, stdio: "pipe" });
  const inFolder = (name: string) => path.join(folder, name);
  writeFileSync(inFolder("ts.cnf"), settings);
  writeFileSync(inFolder("serial"), "01\n");
  call(
    ...[
      "req",
      "-x509",
      "-newkey",
      "ec",
      "-pkeyopt",
      "ec_paramgen_curve:P-256",
      "-nodes",
      "-keyout",
      "tsa.key",
    ],
    ...["-out", "tsa.pem", "-days", "2", "-subj", "/CN=Timestamps of the tests"],
    ...["-addext", "extendedKeyUsage=critical,timeStamping", "-addext", "keyUsage=critical,digitalSignature"],
  );
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on("data", (chunk: Buffer) => chunks.push(chunk));
    request.on("end", () => {
      writeFileSync(inFolder("query"), Buffer.concat(chunks));
      call("ts", "-reply", "-config", "ts.cnf", "-queryfile", "query", "-out", "reply");
      response
        .writeHead(200, { "Content-Type": "application/timestamp-reply" })
        .end(readFileSync(inFolder("reply")));
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    certificate: call("x509", "-in", "tsa.pem", "-outform", "DER"),
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
};
