import { pathToFileURL } from 'node:url';
import { inRoot } from '../paths.mjs';

/**
 * A module of app/evaluation, as TypeScript: the project's Node takes the types away itself.
 * @param {string} name @returns {Promise<any>}
 */
export const appModule = (name) => import(pathToFileURL(inRoot('app', 'evaluation', name)).href);
