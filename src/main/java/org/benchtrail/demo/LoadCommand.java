package org.benchtrail.demo;

import io.quarkus.runtime.QuarkusApplication;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** {@code load FILE...}: loads scenario files into the database and ends; 0 if all were taken, 1 if one was refused. */
public class LoadCommand implements QuarkusApplication {
    private final Scenarios scenarios;

    public LoadCommand(Scenarios scenarios) {
        this.scenarios = scenarios;
    }

    @Override
    public int run(String... words) {
        List<String> files = Arrays.asList(words).subList(1, words.length);
        if (files.isEmpty()) {
            System.err.println("Name the scenario files to load: load FILE...");
            return 1;
        }
        for (String file : files) {
            try {
                List<String> opened = scenarios.load(file, Files.readString(Path.of(file), StandardCharsets.UTF_8));
                System.out.println(file + ": "
                        + (opened.isEmpty() ? "nothing new to load" : "opened " + String.join(", ", opened)));
            } catch (IOException e) {
                System.err.println(file + " cannot be read: " + e.getMessage());
                return 1;
            } catch (ScenarioFile.Malformed e) {
                System.err.println(e.getMessage());
                System.err.println("Nothing of this file was loaded.");
                return 1;
            }
        }
        return 0;
    }
}
