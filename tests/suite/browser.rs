//! A real browser for the tests, driven over its protocol through two pipes: no port is opened.
//!
//! The browser is the one named by CHROMIUM, or a usual name on the path; where there is none, tests are skipped with a
//! word, but not in the continuous integration.

use serde_json::{Value, json};
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, Command, Stdio};
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};

/// Longest wait for an answer.
const PATIENCE: Duration = Duration::from_secs(120);

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
    input: ChildStdin,
    messages: Receiver<Value>,
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
        let input = child.stdin.take().expect("a pipe");
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
        let mut tab = Self {
            child,
            input,
            messages,
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

    /// Calls a method of the protocol.
    pub fn call(&mut self, method: &str, parameters: &Value) -> Value {
        self.next += 1;
        let id = self.next;
        let mut message = json!({"id": id, "method": method, "params": parameters});
        if let Some(session) = &self.session {
            message["sessionId"] = json!(session);
        }
        let sent = self.input.write_all(format!("{message}\0").as_bytes());
        sent.and_then(|()| self.input.flush())
            .expect("the browser listens");
        loop {
            let wait = self.messages.recv_timeout(PATIENCE);
            let answer = wait.unwrap_or_else(|_| panic!("{method} has no answer"));
            if answer["id"] == json!(id) {
                assert!(answer["error"].is_null(), "{method}: {}", answer["error"]);
                return answer["result"].clone();
            }
            self.hear(&answer);
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
        let begun = Instant::now();
        while self.eval(expression) != json!(true) {
            assert!(
                begun.elapsed() < PATIENCE,
                "waited for {expression}: {:?}",
                self.complaints
            );
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Opens a file of the disk, at an address inside it.
    #[track_caller]
    pub fn open(&mut self, file: &Path, hash: &str) {
        self.call("Page.navigate", &json!({"url": "about:blank"}));
        let address = format!("file://{}{hash}", file.display());
        self.call("Page.navigate", &json!({"url": address}));
        self.wait_for("document.documentElement?.dataset.ready !== undefined");
    }

    /// Size of the window, light or dark.
    pub fn look(&mut self, width: u32, height: u32, is_dark: bool) {
        let size =
            json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": false});
        self.call("Emulation.setDeviceMetricsOverride", &size);
        let scheme = if is_dark { "dark" } else { "light" };
        let media = json!({"features": [{"name": "prefers-color-scheme", "value": scheme}]});
        self.call("Emulation.setEmulatedMedia", &media);
    }

    /// A key, pressed and let go.
    pub fn key(&mut self, key: &str) {
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
            let mut event =
                json!({"type": kind, "key": key, "code": key, "windowsVirtualKeyCode": code});
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
