// /docs opened in Chromium: nothing loaded from elsewhere, nothing refused, every operation on it, no wider than a phone.
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { tag, words } from '../../../src/api/openapi/page/html.ts';
import { CHROMIUM_FLAGS, chromiumPath } from '../../draw/chromium.ts';
import { ask, type Running } from '../running.ts';
import { DOCUMENT, OPERATIONS } from './documentChecks.ts';
import { wholeApp } from './wholeApp.ts';

let app: Running;
let browser: Browser;
beforeAll(async () => {
  app = await wholeApp();
  browser = await chromium.launch({ executablePath: chromiumPath(), args: CHROMIUM_FLAGS });
}, 30_000);
afterAll(async () => {
  await browser.close();
  await app.stop();
});

type Opened = { readonly page: Page; readonly requests: readonly string[]; readonly complaints: readonly string[] };

async function opened(width: number, height: number): Promise<Opened> {
  const page = await browser.newPage({ viewport: { width, height } });
  const requests: string[] = [];
  const complaints: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.goto(`${app.url}/docs`);
  return { page, requests, complaints };
}

describe.each([
  ['a phone', 360, 740],
  ['a desk', 1280, 900],
])('on %s', (_, width, height) => {
  test('asks for nothing else, complains of nothing, and is no wider than the screen', { timeout: 30_000 }, async () => {
    const { page, requests, complaints } = await opened(width, height);
    expect(requests.filter((url) => !url.startsWith('data:'))).toEqual([`${app.url}/docs`]);
    expect(complaints).toEqual([]);
    expect(await page.evaluate(`document.documentElement.scrollWidth - window.innerWidth`)).toBe(0);
    // The style sheet was let in.
    expect(await page.evaluate(`getComputedStyle(document.body).marginTop`)).toBe('0px');
    await page.close();
  });

  test('shows every operation with its address, and every link within it leads somewhere', { timeout: 30_000 }, async () => {
    const { page } = await opened(width, height);
    const shown = await page.evaluate<readonly (readonly [string, string])[]>(
      `[...document.querySelectorAll('main section[id]')].map((section) => [ section.id, section.querySelector('.request')?.textContent, ])`,
    );
    for (const { method, path, operation } of OPERATIONS)
      expect(shown).toContainEqual([operation.operationId, `${method.toUpperCase()} ${path}`]);
    for (const name of Object.keys(DOCUMENT.components.schemas)) expect(shown.map(([id]) => id)).toContain(`schema-${name}`);
    const lost = await page.evaluate<readonly string[]>(
      `[...document.querySelectorAll('a[href^="#"]')] .map((link) => link.getAttribute('href')?.slice(1) ?? '') .filter((id) => document.getElementById(id) === null)`,
    );
    expect(lost).toEqual([]);
    const led = await page.evaluate<readonly string[]>(
      `[...document.querySelectorAll('nav a')].map((link) => link.getAttribute('href')?.slice(1) ?? '')`,
    );
    // Whatever has a place on the page is in the contents.
    expect(shown.map(([id]) => id).filter((id) => !led.includes(id))).toEqual([]);
    const back = `document.querySelectorAll('main .part a[href="#contents"]').length - document.querySelectorAll('main h2').length`;
    expect(await page.evaluate(back)).toBe(0);
    expect(await page.evaluate(`document.querySelectorAll('script, iframe, form, img').length`)).toBe(0);
    await page.close();
  });
});

test('addresses of the contents are broken only where a part of them begins', { timeout: 30_000 }, async () => {
  const { page } = await opened(360, 740);
  // A part that was broken within has more than one box.
  const broken = await page.evaluate<readonly string[]>(
    `[...document.querySelectorAll('nav code')].flatMap((code) => [...code.childNodes]).filter((node) => {
      const range = document.createRange();
      range.selectNodeContents(node);
      return node.nodeType === Node.TEXT_NODE && range.getClientRects().length > 1;
    }).map((node) => node.textContent)`,
  );
  expect(broken).toEqual([]);
  await page.close();
});

test('printed, nothing is hidden and everything is black on white', { timeout: 30_000 }, async () => {
  const { page } = await opened(794, 1123);
  await page.emulateMedia({ media: 'print' });
  const colours = await page.evaluate(
    `[ ...new Set([...document.querySelectorAll('body *')].map((element) => getComputedStyle(element).color)), ]`,
  );
  expect(colours).toEqual(['rgb(0, 0, 0)']);
  const cut = await page.evaluate(
    `[...document.querySelectorAll('pre')].filter((pre) => pre.scrollHeight > pre.clientHeight + 1).length`,
  );
  expect(cut).toBe(0);
  await page.close();
});

test('the policy lets one style sheet in by its hash and nothing run', async () => {
  const { headers, text } = await ask(`${app.url}/docs`);
  const policy = String(headers['content-security-policy']);
  expect(policy).toMatch(/^default-src 'none'; style-src 'sha256-[A-Za-z0-9+/]{43}='; /);
  expect(policy).not.toContain('unsafe');
  expect(text).not.toMatch(/https?:\/\//);
});

test('text cannot become markup', () => {
  expect(tag('p', { title: '"><script>' }, '<script>alert(1)</script>', words('a & b')).html).toBe(
    '<p title="&quot;&gt;&lt;script&gt;">&lt;script&gt;alert(1)&lt;/script&gt;a &amp; b</p>',
  );
});
