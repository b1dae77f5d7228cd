// Posts days from many clients at once with autocannon, in a process of its own so that it holds nothing else up. Reads what to do as JSON
// from standard input and prints what came back as JSON. Started by startLoad.ts.
import { readFileSync } from 'node:fs';
import autocannon from 'autocannon';

const { url, path, bodies, clients, seconds, perSecond, wait } = JSON.parse(readFileSync(0, 'utf8'));

const statuses = {};
const accepted = [];
const refusedWithoutTime = [];

/** Names of headers in lower case: autocannon hands them over as they were sent. */
function header(headers, name) {
  return Object.entries(headers ?? {}).find(([each]) => each.toLowerCase() === name)?.[1];
}

function requestOf(body, index) {
  return {
    method: 'POST',
    path,
    headers: { 'Content-Type': 'application/json', Prefer: `wait=${wait}` },
    body,
    onResponse: (status, _text, _context, headers) => {
      statuses[status] = (statuses[status] ?? 0) + 1;
      if (status === 200 || status === 202) accepted.push({ location: header(headers, 'location'), body: index });
      if (status === 503 && header(headers, 'retry-after') === undefined) refusedWithoutTime.push(status);
    },
  };
}

const requests = bodies.map(requestOf);
let started = 0;
const result = await autocannon({
  url,
  connections: clients,
  duration: seconds,
  timeout: 60,
  ...(perSecond === 0 ? {} : { connectionRate: perSecond }),
  requests,
  // Each client begins with another day.
  setupClient: (client) => {
    const from = started++ % requests.length;
    client.setRequests([...requests.slice(from), ...requests.slice(0, from)]);
  },
});
const { errors, timeouts } = result;
process.stdout.write(
  JSON.stringify({
    statuses,
    accepted,
    refusedWithoutTime: refusedWithoutTime.length,
    errors,
    timeouts,
    seconds: result.duration,
  }),
);
