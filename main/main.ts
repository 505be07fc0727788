import { runElectronHost } from './host/electron-host.ts';

runElectronHost();
