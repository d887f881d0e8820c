/** What the machine has against reading and storing, in the words of whoever can do something about it. */

export interface MachineFault {
  /** 507 where there is no room, else 503. */
  readonly status: 503 | 507;
  readonly code: string;
  /** Without a full stop, both: what comes of it, and what then to do again, is for whoever tells it. */
  readonly text: string;
  readonly remedy: string;
}

/** By the beginnings of the codes that the file system and SQLite give; the first that fits. */
const FAULTS: readonly (MachineFault & { readonly codes: readonly string[] })[] = [
  {
    codes: ['SQLITE_FULL', 'ENOSPC', 'EDQUOT'],
    status: 507,
    code: 'storage-full',
    text: 'The disk that holds the data is full',
    remedy: 'Make room',
  },
  {
    codes: ['EFBIG'],
    status: 507,
    code: 'storage-too-small',
    text: 'The disk that holds the data takes no file as large as this',
    remedy: 'Move the data folder to a disk that does, or raise the limit of this user',
  },
  {
    codes: ['SQLITE_READONLY', 'EROFS', 'EACCES', 'EPERM'],
    status: 503,
    code: 'storage-read-only',
    text: 'The data folder cannot be written to',
    remedy: 'Allow this program to write to it',
  },
  {
    codes: ['SQLITE_BUSY', 'SQLITE_LOCKED', 'EBUSY'],
    status: 503,
    code: 'storage-busy',
    text: 'Another program holds the database',
    remedy: 'Close the other program (one that shows databases, copies or synchronises the folder)',
  },
  {
    codes: ['SQLITE_CORRUPT', 'SQLITE_NOTADB'],
    status: 503,
    code: 'storage-damaged',
    text: 'The database is damaged',
    remedy: 'Stop the program and restore the latest backup (stillwarm restore FILE)',
  },
  {
    codes: ['EMFILE', 'ENFILE', 'ERR_WORKER_INIT_FAILED'],
    status: 503,
    code: 'too-many-files-open',
    text: 'This machine lets the program open no more files or threads at once',
    remedy: 'Wait a moment, or allow it more (ulimit -n)',
  },
  {
    codes: ['SQLITE_CANTOPEN'],
    status: 503,
    code: 'storage-not-reached',
    text: 'The database cannot be opened',
    remedy: 'Look whether its folder is there and this program may write to it',
  },
  {
    codes: ['SQLITE_IOERR', 'SQLITE_PROTOCOL', 'EIO', 'ENXIO', 'ENODEV', 'ESTALE'],
    status: 503,
    code: 'storage-failing',
    text: 'The disk that holds the data does not read or write as it should',
    remedy: 'Look whether it is connected, has room and is sound',
  },
];

/** Null for what is no fault of the machine. */
export function machineFault(error: unknown): MachineFault | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return FAULTS.find(({ codes }) => codes.some((it) => code === it || code.startsWith(`${it}_`))) ?? null;
}
