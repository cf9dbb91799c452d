package org.benchtrail.platform;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocalPathTest {
    @ParameterizedTest
    @ValueSource(strings = {"/", "/me", "/people?search=a%26b&after=c", "/a//b", "/a#b"})
    void localPath_isKept(String path) {
        assertEquals(path, LocalPath.orElse(path, "/otherwise"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "me",
                "//host",
                "/\\host",
                "/a\\b",
                "https://host/",
                "/a\nb",
                "/ü",
                " /me",
                "/a b",
                "data:text/html,x"
            })
    void anythingElse_isNot(String path) {
        assertEquals("/otherwise", LocalPath.orElse(path, "/otherwise"));
    }

    @Test
    void nullAndOverlong_areNot() {
        assertEquals("/otherwise", LocalPath.orElse(null, "/otherwise"));
        assertEquals("/otherwise", LocalPath.orElse("/" + "a".repeat(2000), "/otherwise"));
    }
}
