package org.benchtrail.demo;

import io.quarkus.runtime.QuarkusApplication;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * {@code load FILE...}: loads scenario files into the database and ends; 0 if all were taken, 1 if one was refused. A refused
 * one keeps none of the others out.
 */
public class LoadCommand implements QuarkusApplication {
    private final Scenarios scenarios;

    public LoadCommand(Scenarios scenarios) {
        this.scenarios = scenarios;
    }

    @Override
    public int run(String... words) {
        List<String> files = Arrays.asList(words).subList(1, words.length);
        int code = 0;
        for (String file : files) {
            if (!load(file)) {
                System.err.println("Nothing of this file was loaded.");
                code = 1;
            }
        }
        return code;
    }

    private boolean load(String file) {
        try {
            System.out.println(
                    file + ": " + told(scenarios.load(file, Files.readString(Path.of(file), StandardCharsets.UTF_8))));
            return true;
        } catch (NoSuchFileException e) {
            System.err.println(file + " is not there. Look at its name and folder.");
        } catch (CharacterCodingException e) {
            System.err.println(file + " is not text in UTF-8. Save it as UTF-8.");
        } catch (IOException e) {
            System.err.println(file + " cannot be read: " + e.getMessage());
        } catch (ScenarioFile.Malformed e) {
            System.err.println(e.getMessage());
        }
        return false;
    }

    private static String told(Optional<List<String>> opened) {
        return opened.map(numbers ->
                        numbers.isEmpty() ? "loaded; it has no tickets" : "opened " + String.join(", ", numbers))
                .orElse("loaded before; nothing new");
    }
}
