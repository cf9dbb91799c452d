package org.benchtrail.people;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.benchtrail.core.Invalid;
import org.benchtrail.demo.Scenarios;
import org.junit.jupiter.api.Test;

class PasswordsTest {
    private static void check(String password) {
        Invalid.Collector problems = new Invalid.Collector();
        Passwords.check(password, "password", problems);
        problems.throwIfAny();
    }

    @Test
    void demosPassword_isTaken_orTheDemoWouldNotStart() {
        assertDoesNotThrow(() -> check(Scenarios.DEMO_PASSWORD));
    }

    @Test
    void wordsThatAreTriedFirst_areRefused() {
        assertThrows(Invalid.class, () -> check("password1234"));
    }
}
