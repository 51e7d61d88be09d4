//! A real browser for the tests, driven over its protocol through two pipes: no port is opened.
//!
//! The browser is the one named by CHROMIUM, or a usual name on the path; where there is none, tests are skipped with a
//! word, but not in the continuous integration.

use serde_json::{Value, json};
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::time::{Duration, Instant};

/// Longest wait for an answer, or for what a test waits for.
const PATIENCE: Duration = Duration::from_secs(60);

/// Longest life of a page in the suite, however slow the machine: a test that takes longer hangs.
const LIFE: Duration = Duration::from_secs(300);

/// The browser of this machine.
pub fn browser() -> Option<PathBuf> {
    if let Some(named) = std::env::var_os("CHROMIUM") {
        return Some(PathBuf::from(named));
    }
    let path = std::env::var_os("PATH")?;
    let names = ["chromium", "chromium-browser", "google-chrome"];
    let found = std::env::split_paths(&path)
        .flat_map(|folder| names.map(|name| folder.join(name)))
        .find(|file| file.is_file());
    if found.is_none() {
        let is_ci = std::env::var("CI").is_ok_and(|value| value == "true");
        assert!(
            !is_ci,
            "no chromium on the path: install it or name it in CHROMIUM"
        );
        println!("skipped: no chromium on the path; install it or name it in CHROMIUM");
    }
    found
}

/// One page in a browser of its own.
pub struct Tab {
    child: Child,
    input: Sender<String>,
    messages: Receiver<Value>,
    end: Instant,
    next: u64,
    session: Option<String>,
    /// What went wrong on the page.
    pub complaints: Vec<String>,
    /// Addresses that the page asked for.
    pub requests: Vec<String>,
    _profile: tempfile::TempDir,
}

impl Tab {
    /// An empty page of a new browser.
    pub fn new(browser: &Path) -> Self {
        let profile = tempfile::tempdir().expect("a folder");
        // The protocol is on the third and the fourth file of the process.
        let script = "exec \"$0\" \"$@\" 3<&0 4>&1 </dev/null >/dev/null 2>&1";
        let mut child = Command::new("sh")
            .args(["-c", script])
            .arg(browser)
            .args([
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--no-first-run",
            ])
            .args([
                "--remote-debugging-pipe",
                "--hide-scrollbars",
                "--disable-background-networking",
            ])
            .arg(format!("--user-data-dir={}", profile.path().display()))
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("the browser starts");
        let mut pipe = child.stdin.take().expect("a pipe");
        let output = child.stdout.take().expect("a pipe");
        let (sender, messages) = channel();
        std::thread::spawn(move || {
            for message in BufReader::new(output).split(0) {
                let Ok(message) = message else { return };
                let read = serde_json::from_slice(&message).expect("the protocol is JSON");
                if sender.send(read).is_err() {
                    return;
                }
            }
        });
        // A pipe that nobody reads any more takes a message for ever, so it is written to from beside.
        let (input, written) = channel::<String>();
        std::thread::spawn(move || {
            for message in written {
                let sent = pipe.write_all(message.as_bytes());
                if sent.and_then(|()| pipe.flush()).is_err() {
                    return;
                }
            }
        });
        let mut tab = Self {
            child,
            input,
            messages,
            end: Instant::now() + LIFE,
            next: 0,
            session: None,
            complaints: Vec::new(),
            requests: Vec::new(),
            _profile: profile,
        };
        let target = tab.call("Target.createTarget", &json!({"url": "about:blank"}));
        let asked = json!({"targetId": target["targetId"], "flatten": true});
        let attached = tab.call("Target.attachToTarget", &asked);
        tab.session = attached["sessionId"].as_str().map(str::to_owned);
        for room in ["Runtime", "Log", "Network", "Page"] {
            tab.call(&format!("{room}.enable"), &json!({}));
        }
        tab
    }

    /// For what takes longer than the tests of every change.
    pub fn may_take(&mut self, minutes: u64) {
        self.end = Instant::now() + Duration::from_secs(60 * minutes);
    }

    /// How long may still be waited: until then, and until the page's end.
    #[track_caller]
    fn left(&self, until: Instant, what: &str) -> Duration {
        let now = Instant::now();
        let told = &self.complaints;
        assert!(
            now < self.end,
            "the page's time is over at {what:.200}; {told:?}"
        );
        assert!(
            now < until,
            "waited {PATIENCE:?} for {what}, in vain; {told:?}"
        );
        until.min(self.end) - now
    }

    /// Calls a method of the protocol. However many events come before the answer, it is waited for no longer.
    #[track_caller]
    pub fn call(&mut self, method: &str, parameters: &Value) -> Value {
        self.next += 1;
        let id = self.next;
        let mut message = json!({"id": id, "method": method, "params": parameters});
        if let Some(session) = &self.session {
            message["sessionId"] = json!(session);
        }
        self.input
            .send(format!("{message}\0"))
            .expect("the browser listens");
        let what = format!("{method} {parameters}");
        let what: String = what.chars().take(200).collect();
        let until = Instant::now() + PATIENCE;
        loop {
            let wait = self.messages.recv_timeout(self.left(until, &what));
            match wait {
                Ok(answer) if answer["id"] == json!(id) => {
                    assert!(answer["error"].is_null(), "{what}: {}", answer["error"]);
                    return answer["result"].clone();
                }
                Ok(event) => self.hear(&event),
                Err(RecvTimeoutError::Timeout) => {}
                Err(RecvTimeoutError::Disconnected) => {
                    panic!("the browser has ended before {what}")
                }
            }
        }
    }

    /// Keeps what an event says of faults and of the network.
    fn hear(&mut self, event: &Value) {
        let told = &event["params"];
        match event["method"].as_str() {
            Some("Runtime.exceptionThrown") => {
                self.complaints.push(told["exceptionDetails"].to_string());
            }
            Some("Runtime.consoleAPICalled") if told["type"] != "log" => {
                self.complaints.push(told["args"].to_string());
            }
            Some("Log.entryAdded") => self.complaints.push(told["entry"].to_string()),
            Some("Network.requestWillBeSent") => {
                let address = told["request"]["url"].as_str().unwrap_or_default();
                self.requests.push(address.to_owned());
            }
            _ => {}
        }
    }

    /// What an expression gives; a promise is waited for.
    #[track_caller]
    pub fn eval(&mut self, expression: &str) -> Value {
        let asked = json!({"expression": expression, "returnByValue": true, "awaitPromise": true});
        let answer = self.call("Runtime.evaluate", &asked);
        assert!(
            answer["exceptionDetails"].is_null(),
            "{expression}: {}",
            answer["exceptionDetails"]
        );
        answer["result"]["value"].clone()
    }

    /// Waits until an expression is true.
    #[track_caller]
    pub fn wait_for(&mut self, expression: &str) {
        let until = Instant::now() + PATIENCE;
        while self.eval(expression) != json!(true) {
            self.left(until, expression);
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Opens a file of the disk, at an address inside it.
    #[track_caller]
    pub fn open(&mut self, file: &Path, hash: &str) {
        self.call("Page.navigate", &json!({"url": "about:blank"}));
        let address = format!("file://{}{hash}", file.display());
        self.call("Page.navigate", &json!({"url": address}));
        let until = Instant::now() + PATIENCE;
        while self.eval("document.documentElement?.dataset.ready !== undefined") != json!(true) {
            // A page whose script has failed is never ready.
            assert!(
                self.complaints.is_empty(),
                "the page does not open; stale? run page/build; {:#?}",
                self.complaints
            );
            self.left(until, &format!("the page to open at {hash}"));
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Size of the window, light or dark.
    pub fn look(&mut self, width: u32, height: u32, is_dark: bool) {
        let size =
            json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": false});
        self.call("Emulation.setDeviceMetricsOverride", &size);
        let scheme = if is_dark { "dark" } else { "light" };
        let media =
            json!({"media": "", "features": [{"name": "prefers-color-scheme", "value": scheme}]});
        self.call("Emulation.setEmulatedMedia", &media);
    }

    /// The page as it goes to paper, so wide and high.
    pub fn look_at_paper(&mut self, width: u32, height: u32) {
        let size =
            json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": false});
        self.call("Emulation.setDeviceMetricsOverride", &size);
        self.call("Emulation.setEmulatedMedia", &json!({"media": "print"}));
    }

    /// A key, pressed and let go.
    pub fn key(&mut self, key: &str) {
        self.key_with(key, 0);
    }

    /// The tabulator with the shift key held: one element back.
    pub fn tab_back(&mut self) {
        const SHIFT: u32 = 8;
        self.key_with("Tab", SHIFT);
    }

    fn key_with(&mut self, key: &str, modifiers: u32) {
        let code = match key {
            "ArrowRight" => 39,
            "ArrowLeft" => 37,
            "ArrowUp" => 38,
            "ArrowDown" => 40,
            "Enter" => 13,
            "Tab" => 9,
            "Home" => 36,
            "End" => 35,
            _ => 32,
        };
        for kind in ["keyDown", "keyUp"] {
            let mut event = json!({"type": kind, "key": key, "code": key, "windowsVirtualKeyCode": code, "modifiers": modifiers});
            if kind == "keyDown" && (key == "Enter" || key == " ") {
                event["text"] = json!(if key == "Enter" { "\r" } else { " " });
            }
            self.call("Input.dispatchKeyEvent", &event);
        }
    }

    /// Presses at the first place, moves over the others, lets go at the last.
    pub fn drag(&mut self, places: &[[f64; 2]]) {
        let mut event = |kind: &str, [x, y]: [f64; 2]| {
            let event = json!({"type": kind, "x": x, "y": y, "button": "left", "buttons": 1, "clickCount": 1});
            self.call("Input.dispatchMouseEvent", &event);
        };
        event("mousePressed", places[0]);
        for place in places {
            event("mouseMoved", *place);
        }
        event("mouseReleased", places[places.len() - 1]);
    }

    /// The middle of an element, and its size.
    #[track_caller]
    pub fn place_of(&mut self, selector: &str) -> [f64; 4] {
        let expression = format!(
            "(() => {{ const e = document.querySelector({selector:?}); e.scrollIntoView({{block: 'center'}}); \
             const b = e.getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2, b.width, b.height]; }})()"
        );
        serde_json::from_value(self.eval(&expression)).expect("four numbers")
    }

    /// Clicks the middle of an element.
    #[track_caller]
    pub fn click(&mut self, selector: &str) {
        let [x, y, ..] = self.place_of(selector);
        self.drag(&[[x, y]]);
    }
}

impl Drop for Tab {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
