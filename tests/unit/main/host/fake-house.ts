import type { DoorEvent } from '../../../../app/contract/index.ts';
import type { House } from '../../../../main/host/dispatch.ts';
import type { LogEntry } from '../../../../main/host/log.ts';
import type { Standing } from '../../../../main/host/refuse-by-role.ts';
import type { Call, Services } from '../../../../main/services/service.ts';

/** A house with only the services given, and a memory of what it announced and logged. */
export function fakeHouse(services: Partial<Services>, standing: Standing = EXAMINER_AT_WORK) {
  const announced: DoorEvent[] = [];
  const logged: { level: string; message: string; entry: LogEntry }[] = [];
  const house: House = {
    services: services as Services,
    standing: () => Promise.resolve(standing),
    touch() {},
    announce: (event) => { announced.push(event); },
    log: {
      info: (message, entry = {}) => { logged.push({ level: 'info', message, entry }); },
      error: (message, entry = {}) => { logged.push({ level: 'error', message, entry }); },
    },
    newId: () => '0193-0000-7000-8000-00005eed0001',
  };
  return { house, announced, logged };
}

export const EXAMINER_AT_WORK: Standing = { casebookOpen: true, person: { name: 'Mara Quill', roles: ['examiner'] } };

export const quietCall = (): Call => ({ session: { personId: null }, signal: new AbortController().signal, emit() {} });
