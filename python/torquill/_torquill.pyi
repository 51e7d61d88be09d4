def run(arguments: list[str]) -> tuple[int, str, str]:
    """Runs a command: the words behind the program's name. Returns exit status, standard output, standard error."""
