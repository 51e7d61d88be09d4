//! A Rust file as tokens with their lines: comments and items under `#[cfg(test)]` are left out.

/// What a token is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A name or a keyword.
    Word,
    /// The inside of a text.
    Text,
    /// One sign; `::` is two.
    Sign,
    /// A number, a character or a lifetime.
    Other,
}

/// One token.
#[derive(Debug, Clone)]
pub struct Token {
    pub kind: Kind,
    pub text: String,
    pub line: usize,
}

impl Token {
    pub fn is(&self, text: &str) -> bool {
        self.text == text && matches!(self.kind, Kind::Word | Kind::Sign)
    }
}

/// The tokens of a file without those of its tests.
pub fn of_the_program(code: &str) -> Vec<Token> {
    without_tests(&all(code))
}

struct Reader {
    signs: Vec<char>,
    at: usize,
    line: usize,
}

impl Reader {
    fn ahead(&self, by: usize) -> char {
        self.signs.get(self.at + by).copied().unwrap_or('\0')
    }

    fn starts(&self, text: &str) -> bool {
        text.chars()
            .enumerate()
            .all(|(index, sign)| self.ahead(index) == sign)
    }

    fn step(&mut self) -> char {
        let sign = self.ahead(0);
        self.at += 1;
        self.line += usize::from(sign == '\n');
        sign
    }

    fn over(&mut self, wanted: impl Fn(char) -> bool) -> String {
        let mut text = String::new();
        while self.at < self.signs.len() && wanted(self.ahead(0)) {
            text.push(self.step());
        }
        text
    }

    fn until(&mut self, end: &str) -> String {
        let mut text = String::new();
        while self.at < self.signs.len() && !self.starts(end) {
            text.push(self.step());
        }
        for _ in end.chars() {
            self.step();
        }
        text
    }

    /// The inside of a quoted text whose opening quote has been read.
    fn quoted(&mut self) -> String {
        let mut text = String::new();
        while self.at < self.signs.len() && self.ahead(0) != '"' {
            let sign = self.step();
            text.push(sign);
            if sign == '\\' {
                text.push(self.step());
            }
        }
        self.step();
        text
    }

    /// Whether a raw text begins here, and with how many `#`.
    fn raw_hashes(&self) -> Option<usize> {
        let from = usize::from(self.ahead(0) == 'b');
        if self.ahead(from) != 'r' {
            return None;
        }
        let hashes = (from + 1..)
            .take_while(|index| self.ahead(*index) == '#')
            .count();
        (self.ahead(from + 1 + hashes) == '"').then_some(hashes)
    }

    fn block_comment(&mut self) {
        let mut depth = 0;
        while self.at < self.signs.len() {
            if self.starts("/*") {
                depth += 1;
                self.step();
            } else if self.starts("*/") {
                depth -= 1;
                self.step();
            }
            self.step();
            if depth == 0 {
                return;
            }
        }
    }

    fn token(&mut self) -> Option<(Kind, String)> {
        let sign = self.ahead(0);
        if sign.is_whitespace() {
            self.step();
            return None;
        }
        if self.starts("//") {
            self.over(|c| c != '\n');
            return None;
        }
        if self.starts("/*") {
            self.block_comment();
            return None;
        }
        if let Some(hashes) = self.raw_hashes() {
            self.over(|c| c != '"');
            self.step();
            let end = format!("\"{}", "#".repeat(hashes));
            return Some((Kind::Text, self.until(&end)));
        }
        if sign == '"' || (sign == 'b' && self.ahead(1) == '"') {
            self.over(|c| c != '"');
            self.step();
            return Some((Kind::Text, self.quoted()));
        }
        if sign == '\'' {
            return Some((Kind::Other, self.character_or_lifetime()));
        }
        if sign.is_alphabetic() || sign == '_' {
            return Some((Kind::Word, self.over(|c| c.is_alphanumeric() || c == '_')));
        }
        if sign.is_ascii_digit() {
            return Some((Kind::Other, self.over(|c| c.is_alphanumeric() || c == '_')));
        }
        Some((Kind::Sign, self.step().to_string()))
    }

    fn character_or_lifetime(&mut self) -> String {
        if self.ahead(1) == '\\' {
            self.step();
            self.step();
            self.step();
            return self.until("'");
        }
        if self.ahead(2) == '\'' {
            self.step();
            self.step();
            return self.step().to_string();
        }
        self.step();
        self.over(|c| c.is_alphanumeric() || c == '_')
    }
}

fn all(code: &str) -> Vec<Token> {
    let mut reader = Reader {
        signs: code.chars().collect(),
        at: 0,
        line: 1,
    };
    let mut tokens = Vec::new();
    while reader.at < reader.signs.len() {
        let line = reader.line;
        if let Some((kind, text)) = reader.token() {
            tokens.push(Token { kind, text, line });
        }
    }
    tokens
}

/// Index behind the bracket that closes the one at `open`.
pub fn behind(tokens: &[Token], open: usize) -> usize {
    let mut depth = 0;
    for (index, token) in tokens.iter().enumerate().skip(open) {
        if token.kind == Kind::Sign {
            match token.text.as_str() {
                "(" | "[" | "{" => depth += 1,
                ")" | "]" | "}" => depth -= 1,
                _ => {}
            }
            if depth == 0 {
                return index + 1;
            }
        }
    }
    tokens.len()
}

/// Whether the attribute at `#` is `#[cfg(test)]`.
fn is_test_only(tokens: &[Token], at: usize) -> bool {
    let wanted = ["#", "[", "cfg", "(", "test", ")", "]"];
    wanted
        .iter()
        .enumerate()
        .all(|(index, text)| tokens.get(at + index).is_some_and(|token| token.is(text)))
}

/// Index behind the item at `from`: its attributes, then up to `;` or its block.
fn behind_item(tokens: &[Token], from: usize) -> usize {
    let mut at = from;
    while at < tokens.len() {
        if tokens[at].is("#") {
            at = behind(tokens, at + 1);
        } else if tokens[at].is(";") {
            return at + 1;
        } else if tokens[at].is("{") {
            return behind(tokens, at);
        } else if tokens[at].is("(") || tokens[at].is("[") {
            at = behind(tokens, at);
        } else {
            at += 1;
        }
    }
    at
}

fn without_tests(tokens: &[Token]) -> Vec<Token> {
    let (mut kept, mut at) = (Vec::new(), 0);
    while at < tokens.len() {
        if is_test_only(tokens, at) {
            at = behind_item(tokens, at);
        } else {
            kept.push(tokens[at].clone());
            at += 1;
        }
    }
    kept
}

#[test]
fn law_texts_comments_and_tests_are_told_apart() {
    let code = r##"//! "no text"
        fn f<'a>(c: char) -> &'a str { let q = '"'; let r = r#"a "b" c"#; "one \" two" } /* "x" /* y */ */
        #[cfg(test)] #[path = "x"] mod tests { fn g() { "gone" } }
        struct S;"##;
    let tokens = of_the_program(code);
    let texts: Vec<&str> = tokens
        .iter()
        .filter(|token| token.kind == Kind::Text)
        .map(|token| token.text.as_str())
        .collect();
    assert_eq!(texts, ["a \"b\" c", "one \\\" two"]);
    assert_eq!(tokens.last().map(|token| token.line), Some(4));
    assert!(!tokens.iter().any(|token| token.is("g")));
}
