import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { workerBrowser } from './browser'

let page: Page
const complaints: string[] = []
const hosts = new Set<string>()

beforeAll(async () => {
  page = await (await workerBrowser()).newPage()
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(error.message))
  page.on('requestfailed', (request) => complaints.push(`failed: ${request.url()}`))
  page.on('request', (request) => hosts.add(new URL(request.url()).host))
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`)
    })
  })
})

afterAll(async () => {
  await page?.close()
})

test('the page opens with its title and heading, without a complaint', async () => {
  const response = await page.goto(inject('url'))
  expect(response?.status()).toBe(200)
  await page.getByRole('heading', { name: /^Pegwright: /, level: 1 }).waitFor()
  expect(await page.title()).toMatch(/ – Pegwright$/)
  await page.waitForLoadState('networkidle')
  expect(complaints).toEqual([])
})

test('the page asks nobody but its own host', () => {
  expect([...hosts]).toEqual([new URL(inject('url')).host])
})

test('the server sends the policy that the page carries', async () => {
  const carried = await page
    .locator('meta[http-equiv="Content-Security-Policy"]')
    .getAttribute('content')
  expect(carried).toContain("default-src 'none'")
  const response = await fetch(inject('url'))
  expect(response.headers.get('content-security-policy')).toBe(carried)
})

test('the policy stops scripts and styles written into the page', async () => {
  const seen = await page.evaluate(async () => {
    const violated: string[] = []
    document.addEventListener('securitypolicyviolation', (event) =>
      violated.push(event.effectiveDirective),
    )
    const script = document.createElement('script')
    script.textContent = 'document.title = "changed"'
    const style = document.createElement('style')
    style.textContent = 'body { display: none }'
    document.head.append(script, style)
    await new Promise((resolve) => setTimeout(resolve, 100))
    return { violated, title: document.title }
  })
  expect(seen.title).not.toBe('changed')
  // Once for the policy of the page and once for that of the server.
  expect([...new Set(seen.violated)].sort()).toEqual(['script-src-elem', 'style-src-elem'])
})
