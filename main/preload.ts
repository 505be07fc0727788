import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron';
import type { DoorEvent } from '../app/contract/index.ts';
import { CALL_CHANNEL, EVENT_CHANNEL } from './host/channels.ts';

/**
 * The one thing the page is given: `window.culet`, with the shape of `Door` in app/contract.
 * It hands on values only, never an Electron object; what may be called is decided in the main process.
 */
contextBridge.exposeInMainWorld('culet', {
  call: (name: unknown, input: unknown): Promise<unknown> => ipcRenderer.invoke(CALL_CHANNEL, String(name), input),
  subscribe: (listener: (event: DoorEvent) => void): (() => void) => {
    const forward = (_event: IpcRendererEvent, value: DoorEvent): void => { listener(value); };
    ipcRenderer.on(EVENT_CHANNEL, forward);
    return () => { ipcRenderer.removeListener(EVENT_CHANNEL, forward); };
  },
});
