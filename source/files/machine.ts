import { createHash } from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';

/** 16 hexadecimal digits that tell this laptop from others: its own id where the system has one, else its name. The id itself is not kept anywhere. */
export function machineId(): string {
  const own = idFile('/etc/machine-id') ?? idFile('/var/lib/dbus/machine-id') ?? '';
  const name = own || `${os.hostname()} ${os.platform()} ${os.arch()}`;
  return createHash('sha256').update(`hoveshort ${name}`).digest('hex').slice(0, 16);
}

function idFile(file: string): string | null {
  try {
    return fs.readFileSync(file, 'utf8').trim() || null;
  } catch {
    return null;
  }
}
