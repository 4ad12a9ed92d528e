/** Types of prepare.mjs, which runs before TypeScript is installed. */
export const ROOT: string;
export function run(command: string, args: readonly string[], env?: Readonly<Record<string, string>>): void;
export function bin(name: string): string;
export function prepare(): void;
export function buildIfStale(): void;
