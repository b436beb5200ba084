//! Who may talk to the server: the same machine, or whoever holds the key; never another site.

use axum::http::{HeaderMap, HeaderValue, Method, header};

/// What every answer carries: the page may load nothing from elsewhere and talk to nobody else.
pub(crate) const CONTENT_POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; \
     img-src 'self' data: blob:; connect-src 'self'; base-uri 'none'; form-action 'none'; \
     frame-ancestors 'none'";

/// Name of the cookie that holds the key.
const COOKIE: &str = "tubewright-key";

/// The rules of one running server.
#[derive(Clone, Debug)]
pub(crate) struct Guard {
    /// `127.0.0.1:4517` and the like: what a browser may have in its address bar.
    hosts: Vec<String>,
    /// The key, when the server listens beyond this machine.
    key: Option<String>,
}

/// Why a request is not answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum Refused {
    /// The browser thinks that it talks to somebody else.
    #[error("this address is not the one that the server was started for")]
    Host,
    /// Another site sent the browser here.
    #[error("another site may not change this build")]
    Origin,
    /// The key is missing or wrong.
    #[error("the key is missing: open the address that the terminal shows, or scan its code")]
    Key,
}

impl Guard {
    pub(crate) fn new(hosts: Vec<String>, key: Option<String>) -> Self {
        Self { hosts, key }
    }

    /// Judges one request.
    ///
    /// # Errors
    /// [`Refused`].
    pub(crate) fn judge(
        &self,
        method: &Method,
        headers: &HeaderMap,
        query: Option<&str>,
    ) -> Result<(), Refused> {
        let text = |name| {
            headers
                .get(name)
                .and_then(|v: &HeaderValue| v.to_str().ok())
        };
        let is_ours = |host: &str| self.hosts.iter().any(|ours| ours == host);
        if !text(header::HOST).is_some_and(is_ours) {
            return Err(Refused::Host);
        }
        let origin = text(header::ORIGIN);
        let origin_is_ours = origin
            .and_then(|origin| origin.strip_prefix("http://"))
            .is_some_and(is_ours);
        // A browser names the origin of whatever changes something; what only looks may lack it.
        if (origin.is_some() || *method != Method::GET) && !origin_is_ours {
            return Err(Refused::Origin);
        }
        match &self.key {
            Some(key) if !holds(key, text(header::COOKIE), query) => Err(Refused::Key),
            _ => Ok(()),
        }
    }

    /// The cookie that lets a browser in from now on, when it came with the key in the address.
    pub(crate) fn cookie(&self, query: Option<&str>) -> Option<HeaderValue> {
        let key = self.key.as_deref()?;
        if !holds(key, None, query) {
            return None;
        }
        HeaderValue::from_str(&format!(
            "{COOKIE}={key}; HttpOnly; SameSite=Strict; Path=/"
        ))
        .ok()
    }
}

fn holds(key: &str, cookies: Option<&str>, query: Option<&str>) -> bool {
    let in_query = query.into_iter().flat_map(|query| query.split('&'));
    let in_cookie = cookies.into_iter().flat_map(|all| all.split(';'));
    in_query
        .filter_map(|part| part.strip_prefix("key="))
        .chain(in_cookie.filter_map(|part| part.trim().strip_prefix(COOKIE)?.strip_prefix('=')))
        .any(|given| is_equal(given.as_bytes(), key.as_bytes()))
}

/// Takes the same time wherever the two differ.
fn is_equal(a: &[u8], b: &[u8]) -> bool {
    a.len() == b.len() && a.iter().zip(b).fold(0, |sum, (a, b)| sum | (a ^ b)) == 0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn headers(pairs: &[(header::HeaderName, &str)]) -> HeaderMap {
        pairs
            .iter()
            .map(|(name, value)| (name.clone(), HeaderValue::from_str(value).unwrap()))
            .collect()
    }

    fn guard(key: Option<&str>) -> Guard {
        Guard::new(vec!["127.0.0.1:4000".to_owned()], key.map(str::to_owned))
    }

    #[test]
    fn another_name_for_this_machine_is_refused() {
        let rebound = headers(&[(header::HOST, "evil.example:4000")]);
        assert_eq!(
            guard(None).judge(&Method::GET, &rebound, None),
            Err(Refused::Host)
        );
        assert_eq!(
            guard(None).judge(&Method::GET, &HeaderMap::new(), None),
            Err(Refused::Host)
        );
    }

    #[test]
    fn another_site_changes_nothing_and_reads_nothing() {
        for method in [Method::POST, Method::GET] {
            let foreign = headers(&[
                (header::HOST, "127.0.0.1:4000"),
                (header::ORIGIN, "http://evil.example"),
            ]);
            assert_eq!(
                guard(None).judge(&method, &foreign, None),
                Err(Refused::Origin)
            );
        }
        let none = headers(&[(header::HOST, "127.0.0.1:4000")]);
        assert_eq!(
            guard(None).judge(&Method::POST, &none, None),
            Err(Refused::Origin)
        );
        assert_eq!(guard(None).judge(&Method::GET, &none, None), Ok(()));
    }

    #[test]
    fn beyond_this_machine_only_with_the_key() {
        let guard = guard(Some("abc"));
        let bare = headers(&[(header::HOST, "127.0.0.1:4000")]);
        assert_eq!(guard.judge(&Method::GET, &bare, None), Err(Refused::Key));
        assert_eq!(
            guard.judge(&Method::GET, &bare, Some("key=xyz")),
            Err(Refused::Key)
        );
        assert_eq!(guard.judge(&Method::GET, &bare, Some("key=abc")), Ok(()));
        let cookie = headers(&[
            (header::HOST, "127.0.0.1:4000"),
            (header::COOKIE, "a=b; tubewright-key=abc"),
        ]);
        assert_eq!(guard.judge(&Method::GET, &cookie, None), Ok(()));
        assert!(guard.cookie(Some("key=abc")).is_some());
        assert!(guard.cookie(Some("key=xyz")).is_none());
    }
}
