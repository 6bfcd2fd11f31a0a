/** Why this Node cannot be used by that range of package.json, or null. */
export function nodeRefusal(node: string, range: string): string | null;
/** Installs what package.json names unless it is there; ends the program with a reason if it cannot. */
export function installPackages(): void;
