"""What the wheel installs: the command `lidbook`, with the whole book beside it in `book/`."""
