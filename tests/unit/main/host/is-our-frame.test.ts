import { expect, test } from 'vitest';
import { isOurFrame } from '../../../../main/host/is-our-frame.ts';

test('takes calls from the top frame of the page', () => {
  expect(isOurFrame({ url: 'app://main/', parent: null })).toBe(true);
  expect(isOurFrame({ url: 'app://main/index.html#/bench', parent: null })).toBe(true);
});

test.each(['https://evil.example/?app://main', 'app://other/', 'app://main.evil/', 'file:///app://main/', 'about:blank', 'data:text/html,app://main/', '', 'nonsense'])('refuses calls from %j', (url) => {
  expect(isOurFrame({ url, parent: null })).toBe(false);
});

test('refuses a frame inside a page, and none at all', () => {
  expect(isOurFrame({ url: 'app://main/', parent: {} })).toBe(false);
  expect(isOurFrame(null)).toBe(false);
  expect(isOurFrame(undefined)).toBe(false);
});
