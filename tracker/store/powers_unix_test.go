//go:build !windows

package store_test

import (
	"os"
	"os/exec"
	"syscall"
)

// nobody is the user without powers, by long convention.
const nobody = 65534

// dropPowers lets a process run as nobody where this one is the superuser's.
func dropPowers(cmd *exec.Cmd) {
	if os.Geteuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
}
