// The content policy that every server of the page sends (ci/lib/headers.mjs), also where a test's own server does not.
import { k_content_policy } from '../../../ci/lib/headers.mjs';

export const underPolicy = (page) => page.route((url) => url.pathname === '/', async (route) => {
  const response = await route.fetch();
  await route.fulfill({ response, headers: { ...response.headers(), 'content-security-policy': k_content_policy } });
});
