import { writeFileSync } from "node:fs";
import path from "node:path";
import { openssl } from "./outside-tools";

/** A key whose certificate an authority below a root issued, in files of openssl's: leaf.key, leaf.pem, middle.pem. */
export const issueKey = (folder: string): void => {
  const p256 = ["-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes"];
  const request = (name: string, ...rest: string[]) =>
    openssl(folder, "req", ...p256, "-keyout", `${name}.key`, "-subj", `/CN=${name}`, ...rest);
  request("root", "-x509", "-out", "root.pem", "-days", "30");
  const issue = (name: string, above: string, constraint: string) => {
    request(name, "-out", `${name}.csr`, "-addext", `basicConstraints=critical,${constraint}`);
    const by = ["-CA", `${above}.pem`, "-CAkey", `${above}.key`, "-CAcreateserial"];
    const out = ["-copy_extensions", "copyall", "-out", `${name}.pem`, "-days", "30"];
    openssl(folder, "x509", "-req", "-in", `${name}.csr`, ...by, ...out);
  };
  issue("middle", "root", "CA:TRUE");
  issue("leaf", "middle", "CA:FALSE");
};

/** The leaf as a PKCS #12 file, with what stands above it or alone. */
export const packKey = (folder: string, out: string, above: readonly string[], passphrase: string): void => {
  const bundle = above.map((name) => openssl(folder, "x509", "-in", name)).join("");
  writeFileSync(path.join(folder, "above.pem"), bundle);
  const leaf = ["-inkey", "leaf.key", "-in", "leaf.pem", "-out", out, "-passout", `pass:${passphrase}`];
  openssl(folder, "pkcs12", "-export", ...leaf, ...(above.length > 0 ? ["-certfile", "above.pem"] : []));
};
