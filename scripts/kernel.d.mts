export const KERNEL_FILE: string;
export function kernelFile(): Promise<string>;
